package org.stockcutting.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthReader;
import org.stockcutting.length.LengthUnit;

class NominalCatalogTest {

    /**
     * Minimum dressed thickness, nominal to dry and green: American Softwood Lumber Standard (Voluntary Product Standard PS 20, published
     * by NIST, administered by ALSC), table of nominal and minimum dressed sizes, as reprinted at engineeringtoolbox.com.
     */
    private static final String PS20_THICKNESS = """
            3/8 5/16 11/32
            1/2 7/16 15/32
            5/8 9/16 19/32
            3/4 5/8 11/16
            1 3/4 25/32
            5/4 1 1-1/32
            6/4 1-1/4 1-9/32
            2 1-1/2 1-9/16
            2-1/2 2 2-1/16
            3 2-1/2 2-9/16
            3-1/2 3 3-1/16
            4 3-1/2 3-9/16
            4-1/2 4 4-1/16""";

    /** Minimum dressed face widths of boards and dimension, from the same table. */
    private static final String PS20_WIDTH = """
            2 1-1/2 1-9/16
            3 2-1/2 2-9/16
            4 3-1/2 3-9/16
            5 4-1/2 4-5/8
            6 5-1/2 5-5/8
            7 6-1/2 6-5/8
            8 7-1/4 7-1/2
            9 8-1/4 8-1/2
            10 9-1/4 9-1/2
            11 10-1/4 10-1/2
            12 11-1/4 11-1/2
            14 13-1/4 13-1/2
            16 15-1/4 15-1/2""";

    private final NominalCatalog catalog = NominalCatalog.standard();
    private final LengthReader inches = new LengthReader(LengthUnit.INCH, '.');

    @Test
    void boardsAndDimensionAgreeWithPs20() {
        Map<String, List<Length>> thickness = table(PS20_THICKNESS);
        Map<String, List<Length>> width = table(PS20_WIDTH);
        int seen = 0;
        for (String thick : thickness.keySet()) {
            for (String wide : width.keySet()) {
                for (int column = 0; column < 2; column++) {
                    String name = thick + "x" + wide + (column == 0 ? "" : " green");
                    NominalSize size = catalog.find(name).orElse(null);
                    if (size == null) {
                        continue;
                    }
                    seen++;
                    assertThat(size.thickness())
                            .as(name)
                            .isEqualTo(thickness.get(thick).get(column));
                    assertThat(size.width()).as(name).isEqualTo(width.get(wide).get(column));
                    assertThat(size.nominalThickness()).as(name).isEqualTo(inches.read(thick));
                    assertThat(size.nominalWidth()).as(name).isEqualTo(inches.read(wide));
                    assertThat(size.source()).as(name).contains("PS 20").endsWith("(read)");
                }
            }
        }
        // Seven board thicknesses in all thirteen widths; dimension where the width is no less than the thickness. Dry
        // and green.
        int dimension = 10 + 9 + 9 + 8 + 8 + 7;
        assertThat(seen).isEqualTo(2 * (7 * 13 + dimension));
    }

    /** PS 20: timbers 5 and 6 in are 1/2 in under nominal, 7 to 15 in 3/4, from 16 in 1 when dry; 1/2 in at every size when green. */
    @ParameterizedTest
    @CsvSource({
        "5x5, 4-1/2, 4-1/2",
        "6x6, 5-1/2, 5-1/2",
        "6x8, 5-1/2, 7-1/4",
        "8x8, 7-1/4, 7-1/4",
        "8x16, 7-1/4, 15",
        "12x14, 11-1/4, 13-1/4",
        "16x16, 15, 15",
        "6x6 green, 5-1/2, 5-1/2",
        "6x8 green, 5-1/2, 7-1/2",
        "16x16 green, 15-1/2, 15-1/2",
    })
    void timbersAgreeWithPs20(String name, String thickness, String width) {
        assertSize(name, inches.read(thickness), inches.read(width));
    }

    /** Hardwood thickness chart at engineeringtoolbox.com and woodbin.com: rough, surfaced one side, surfaced two sides. */
    @ParameterizedTest
    @CsvSource({
        "4/4, 1, 7/8, 13/16",
        "5/4, 1-1/4, 1-1/8, 1-1/16",
        "6/4, 1-1/2, 1-3/8, 1-5/16",
        "8/4, 2, 1-13/16, 1-3/4",
        "12/4, 3, 2-13/16, 2-3/4",
        "16/4, 4, 3-13/16, 3-3/4",
    })
    void hardwoodQuartersAreRoughUnlessTheySaySurfaced(String name, String rough, String oneSide, String twoSides) {
        assertSize(name, inches.read(rough), null);
        assertSize(name + " S1S", inches.read(oneSide), null);
        assertSize(name + " S2S", inches.read(twoSides), null);
        assertThat(catalog.find(name + " S2S").orElseThrow().nominalThickness()).isEqualTo(inches.read(rough));
    }

    /** Metric sizes of ALS lumber (engineeringtoolbox.com; 1x6, 4x4 and 6x6 computed): each inch size rounded to whole millimetres. */
    @ParameterizedTest
    @CsvSource({
        "2x4, 38x89",
        "2x6, 38x140",
        "2x8, 38x184",
        "2x10, 38x235",
        "2x12, 38x286",
        "1x6, 19x140",
        "4x4, 89x89",
        "6x6, 140x140"
    })
    void metricNamesAreSoftConversions(String inchName, String metricName) {
        NominalSize inch = catalog.find(inchName).orElseThrow();
        NominalSize metric = catalog.find(metricName).orElseThrow();
        String[] sides = metricName.split("x", -1);
        assertSize(metricName, Length.millimetres(sides[0]), Length.millimetres(sides[1]));
        long half = Length.millimetres("0.5").nanometres();
        assertThat(Math.abs(inch.thickness().minus(metric.thickness()).nanometres()))
                .isLessThanOrEqualTo(half);
        assertThat(Math.abs(inch.width().minus(metric.width()).nanometres())).isLessThanOrEqualTo(half);
        assertThat(metric.nominalThickness()).isEqualTo(inch.nominalThickness());
        assertThat(metric.nominalWidth()).isEqualTo(inch.nominalWidth());
    }

    @Test
    void otherMetricSectionsMeasureWhatTheyAreCalled() {
        for (String name : List.of("50x100", "47x97", "45x95", "45x220", "38x63", "35x90", "24x48", "25x150")) {
            NominalSize size = catalog.find(name).orElseThrow();
            String[] sides = name.split("x", -1);
            assertSize(name, Length.millimetres(sides[0]), Length.millimetres(sides[1]));
            assertThat(size.nominalWidth()).isEqualTo(size.width());
        }
        // EN 336 lists 100 among the sawn widths and 47 among the planed ones: no such section.
        assertThat(catalog.find("47x100")).isEmpty();
    }

    @Test
    void findsNamesHoweverTheyAreSpaced() {
        assertThat(catalog.find(" 2 X 4 ").orElseThrow().name()).isEqualTo("2x4");
        assertThat(catalog.find("2\u00d74").orElseThrow().name()).isEqualTo("2x4");
        assertThat(catalog.find("4/4  s2s").orElseThrow().name()).isEqualTo("4/4 S2S");
        assertThat(catalog.find("7x")).isEmpty();
        assertThat(catalog.find("")).isEmpty();
    }

    @Test
    void everyRowHasASourceAndIsNoBiggerThanItsRoughSize() {
        assertThat(catalog.names()).hasSizeGreaterThan(500);
        for (String name : catalog.names()) {
            NominalSize size = catalog.find(name).orElseThrow();
            assertThat(size.name()).isEqualTo(name);
            assertThat(size.source()).as(name).matches(".{10,}\\((read|computed|memory|.*memory)\\)");
            assertThat(size.thickness().isPositive()).as(name).isTrue();
            assertThat(size.thickness()).as(name).isLessThanOrEqualTo(size.nominalThickness());
            assertThat(size.width() == null).as(name).isEqualTo(size.nominalWidth() == null);
        }
    }

    @Test
    void refusesTwoRowsOfOneName() {
        NominalSize size = catalog.find("2x4").orElseThrow();
        assertThatThrownBy(() -> new NominalCatalog(List.of(size, size))).hasMessageContaining("2x4");
    }

    private void assertSize(String name, Length thickness, Length width) {
        NominalSize size = catalog.find(name).orElseThrow();
        assertThat(size.thickness()).as(name).isEqualTo(thickness);
        assertThat(size.width()).as(name).isEqualTo(width);
    }

    private Map<String, List<Length>> table(String text) {
        Map<String, List<Length>> table = new TreeMap<>();
        for (String line : text.split("\n", -1)) {
            String[] fields = line.split(" ", -1);
            table.put(fields[0], List.of(inches.read(fields[1]), inches.read(fields[2])));
        }
        return table;
    }
}
