package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.job.Fault;
import org.stockcutting.length.Length;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Part;

/** Tapers, marks, fit and hand of a part: what cannot be made is refused with the way out, and tables say the same as documents. */
class ShapingFieldsTest {

    private static List<Fault> faults(String fields) {
        return new JobReader().read("""
                {"parts": [{"id": "leg", "quantity": 3, "length": "20", "width": "2", "thickness": "2", %s}],
                 "stock": [{"id": "s", "length": "96", "width": "4", "thickness": "2-3/16", "price": {"amount": "9"}}]}
                """.formatted(fields.replace('\'', '"'))).faults();
    }

    /** Half of each tapered side stays at the foot, and no taper begins above a mark: common practice, no source. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            'taper': {'foot': '7/8'}                                             | /parts/0/taper/foot
            'taper': {'foot': '2'}                                               | /parts/0/taper/foot
            'taper': {'foot': '1', 'start': '20'}                                | /parts/0/taper/start
            'taper': {'foot': '1', 'start': '4'}, 'marks': [{'purpose': 'rail', 'fromEnd': '4-1/4'}] | /parts/0/taper/start
            'taper': {'foot': '1'}, 'edging': {'edge': '1/8'}                    | /parts/0/taper
            'taper': {'foot': '1'}, 'fit': 'after-assembly', 'allowance': 'milled' | /parts/0/fit
            'fit': 'after-assembly'                                              | /parts/0/fit
            'fit': 'after-assembly', 'allowance': 'milled', 'marks': [{'purpose': 'x', 'fromEnd': '1'}] | /parts/0/marks/0/fromEnd
            'marks': [{'purpose': 'peg', 'bore': '3/8', 'fromEnd': '3'}]         | /parts/0/marks/0/bore
            'marks': [{'purpose': 'peg'}]                                        | /parts/0/marks/0/fromEnd
            'marks': [{'purpose': 'a; b', 'fromEnd': '3'}]                       | /parts/0/marks/0/purpose
            'marks': [{'purpose': 'peg', 'bore': '3/8', 'fromEnd': '3', 'fromEdge': '1/8'}] | /parts/0/marks/0/fromEdge
            'marks': [{'purpose': 'peg', 'fromEnd': '20'}]                       | /parts/0/marks/0/fromEnd
            'marks': [{'purpose': 'peg', 'fromEnd': '0'}]                        | /parts/0/marks/0/fromEnd
            'marks': [{'purpose': 'peg', 'fromEdge': '1', 'depth': '2-1/4'}]     | /parts/0/marks/0/depth
            'hand': 'left'                                                       | /parts/0/hand
            'hand': 'pairs', 'marks': [{'purpose': 'peg', 'fromEdge': '1'}]      | /parts/0/hand
            """)
    void whatCannotBeMadeIsRefused(String fields, String pointer) {
        assertThat(faults(fields)).as(fields).extracting(Fault::pointer).containsExactly(pointer);
    }

    /** A hole goes into the face that its readings lie on, so no deeper than the part is thick. */
    @ParameterizedTest
    @CsvSource({"3/4, 0", "13/16, 1", "2, 1"})
    void aHoleIsNoDeeperThanItsPartIsThick(String depth, int faults) {
        List<Fault> found = new JobReader().read("""
                {"parts": [{"id": "rail", "length": "20", "width": "3", "thickness": "3/4",
                            "marks": [{"purpose": "peg", "fromEnd": "2", "fromEdge": "1", "bore": "3/8", "depth": "%s"}]}],
                 "stock": [{"id": "s", "length": "96", "width": "4", "thickness": "3/4", "price": {"amount": "9"}}]}
                """.formatted(depth)).faults();
        assertThat(found).extracting(Fault::pointer).hasSize(faults).allMatch("/parts/0/marks/0/depth"::equals);
    }

    @Test
    void aTaperOfATradeSizeIsRefused() {
        List<Fault> faults = new JobReader().read("""
                {"parts": [{"id": "leg", "length": "20", "nominal": "2x4", "taper": {"foot": "1"}}],
                 "stock": [{"id": "s", "nominal": "2x4", "length": "96", "price": {"amount": "9"}}]}
                """).faults();
        assertThat(faults).extracting(Fault::pointer).containsExactly("/parts/0/taper");
    }

    @Test
    void aCellOfMarksSaysTheSameAsADocument() {
        String parts = "id,quantity,length,width,thickness,taper.foot,hand,marks\n"
                + "leg,2,20,2,2,1,pairs,end 4 edge 3/4 bore 3/8 depth 1: peg: upper; edge 1/2: line; end 12 mm: rail\n";
        Part part = new CsvJobReader()
                .read(parts, "id,length,width,thickness,price\ns,96,4,2,9\n", null)
                .orThrow()
                .parts()
                .get(0);
        assertThat(part.shaping().marks())
                .containsExactly(
                        new Mark("peg: upper", in("4"), in("0.75"), in("0.375"), in("1")),
                        new Mark("line", null, in("0.5"), null, null),
                        new Mark("rail", Length.millimetres("12"), null, null, null));
        assertThat(part.shaping().taperStart(part.length()))
                .as("a quarter of 20")
                .isEqualTo(in("5"));
    }

    @ParameterizedTest
    @CsvSource({"end 4", "peg", "end 4 end 5: peg", "4: peg", ": peg", "end: peg"})
    void aCellThatIsNoMarkIsReported(String cell) {
        String parts = "id,quantity,length,width,thickness,marks\nleg,2,20,2,2," + cell + "\n";
        assertThat(new CsvJobReader()
                        .read(parts, "id,length,width,thickness,price\ns,96,4,2,9\n", null)
                        .faults())
                .extracting(Fault::pointer, Fault::code)
                .contains(org.assertj.core.api.Assertions.tuple("parts row 2, column marks", "not-a-mark"));
    }

    private static Length in(String inches) {
        return Length.inches(inches);
    }
}
