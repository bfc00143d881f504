package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

class CsvTest {

    private static final String PARTS = "id,quantity,length,width,thickness\nleg,4,16-1/4,2,1-1/2\n";
    private static final String STOCK = "id,nominal,length,price\na,2x6,8',7.10\n";

    private static JobReading read(String parts, String stock) {
        return new CsvJobReader().read(parts, stock, null);
    }

    @Test
    void tablesAndShopTogetherAreTheJob() {
        for (long seed = 1; seed <= 300; seed++) {
            Job job = new RandomJobs(seed).next();
            String parts = CsvTables.parts(job);
            String stock = CsvTables.stock(job);
            JobReading reading = new CsvJobReader().read(parts, stock, JobWriter.writeShop(job));
            assertThat(reading.faults())
                    .as("seed %d:\n%s\n%s", seed, parts, stock)
                    .isEmpty();
            assertThat(reading.job()).as("seed %d:\n%s\n%s", seed, parts, stock).isEqualTo(noBlankTrims(job));
        }
    }

    /** A table cannot say "an own trim, but nothing of it"; it says that the start is good as it is. */
    private static Job noBlankTrims(Job job) {
        String text = JobWriter.write(job).replace("\"trim\": {}", "\"trim\": {\"start\": \"0\"}");
        return new JobReader().read(text).orThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void anySeparatorAndAByteOrderMark(String separator) {
        String parts = "\uFEFF" + PARTS.replace(",", separator);
        Job job = read(parts, STOCK.replace(",", separator)).orThrow();
        assertThat(job.parts()).extracting(Part::id).containsExactly("leg");
        assertThat(job.parts().get(0).length()).isEqualTo(Length.inches("16.25"));
        assertThat(job.forSale()).extracting(StockItem.ForSale::id).containsExactly("a");
    }

    /** RFC 4180, section 2: CRLF, quoted separators, line breaks and doubled quotes. */
    @Test
    void quotedCellsAsInRfc4180() {
        String parts = "\"id\",\"length\",\"width\",\"thickness\",\"note\"\r\n"
                + "\"a,b\",\"16 1/4\",2,1,\"say \"\"when\"\"\"\r\n";
        Part part = read(parts, STOCK).orThrow().parts().get(0);
        assertThat(part.id()).isEqualTo("a,b");
        assertThat(part.note()).isEqualTo("say \"when\"");
    }

    @Test
    void measuredBoardsOneLineEach() {
        String boards = "id,nominal,thickness,length,width,widthEnd,material,zones,crook,straightEdge\n"
                + "m1,2x6,,96-1/8,5-1/2,,wood,0..3; 41..43-1/2 tight-knot; 58..61 @0..1-1/2,1/4,no\n"
                + "m2,,1-1/2,61,5-3/8,4-7/8,wood,10..11 @1..2 blemish up metal,,yes\n"
                + "m3,2x6,,50,,,wood,,,\n";
        JobReading reading = new CsvJobReader().read(PARTS, null, boards, null);
        List<StockItem.OnHand> owned = reading.orThrow().onHand();
        assertThat(owned).extracting(StockItem.OnHand::id).containsExactly("m1", "m2", "m3");
        assertThat(owned.get(0).zones())
                .containsExactly(
                        zone("0", "3", null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false),
                        zone("41", "43.5", null, null, Zone.Severity.TIGHT_KNOT, Zone.Face.BOTH, false),
                        zone("58", "61", "0", "1.5", Zone.Severity.UNUSABLE, Zone.Face.BOTH, false));
        assertThat(owned.get(1).zones())
                .containsExactly(zone("10", "11", "1", "2", Zone.Severity.BLEMISH, Zone.Face.UP, true));
        assertThat(owned.get(2).width()).isEqualTo(Length.inches("5.5"));
        assertThat(owned)
                .extracting(StockItem.OnHand::condition)
                .containsExactly(
                        new Condition(Length.ZERO, Length.inches("0.25"), null, false),
                        new Condition(Length.ZERO, Length.ZERO, Length.inches("4.875"), true),
                        Condition.TRUE);
    }

    private static Zone zone(
            String from,
            String to,
            String fromEdge,
            String toEdge,
            Zone.Severity severity,
            Zone.Face face,
            boolean metal) {
        return new Zone(
                Length.inches(from),
                Length.inches(to),
                fromEdge == null ? null : Length.inches(fromEdge),
                toEdge == null ? null : Length.inches(toEdge),
                severity,
                face,
                metal);
    }

    @Test
    void whatIsOwnedIsToldByItsColumns() {
        Job said = read(PARTS, "id,onHand,nominal,length\na,yes,2x6,50\nb,no,2x6,96\n")
                .orThrow();
        assertThat(said.onHand()).extracting(StockItem.OnHand::id).containsExactly("a");
        assertThat(said.forSale()).extracting(StockItem.ForSale::id).containsExactly("b");
        Job told = read(PARTS, "id,nominal,length,price,quantity\na,2x6,50,,3\nb,2x6,96,5,\nc,2x6,40,,\n")
                .orThrow();
        assertThat(told.onHand()).extracting(StockItem.OnHand::id).containsExactly("a", "c");
        assertThat(told.forSale()).extracting(StockItem.ForSale::id).containsExactly("b");
        assertThat(read(PARTS, "id,nominal,length,price,quantity\na,2x6,50,5,3\n")
                        .faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("stock row 2, column quantity", "unknown-field"));
    }

    @Test
    void faultsNameTableRowAndColumn() {
        String parts = "id,quantity,lenght,width,thickness,make,make.staves.min\n"
                + "leg,four,16,2,1,,\n"
                + ",,,,,,\n"
                + "top,1,,20,1,glue-up,5\n"
                + "leg,1,,2,0,,\n";
        String stock = "id,length,width,thickness,price,zones\nb,50,6,1,,40..51; knot\nc,96,6,1,cheap,\n";
        assertThat(read(parts, stock).faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactlyInAnyOrder(
                        tuple("parts row 1, column lenght", "unknown-field"),
                        tuple("parts row 2, column quantity", "wrong-type"),
                        tuple("parts row 2, column length", "missing"),
                        tuple("parts row 4, column length", "missing"),
                        tuple("parts row 4, column make.staves.max", "missing"),
                        tuple("parts row 5, column length", "missing"),
                        tuple("parts row 5, column id", "duplicate-id"),
                        tuple("parts row 5, column thickness", "not-positive"),
                        tuple("stock row 2, column zones", "not-a-zone"),
                        tuple("stock row 2, column zones", "zone-outside"),
                        tuple("stock row 3, column price", "not-an-amount"));
        assertThat(read(parts, stock).faults())
                .filteredOn(f -> f.code().equals("duplicate-id"))
                .extracting(Fault::text)
                .allMatch(text -> text.contains("parts row 2"));
    }

    @Test
    void tablesThatAreNone() {
        assertThat(read("", STOCK).faults()).extracting(Fault::code).containsExactly("missing");
        assertThat(read("id,length\n\"open", STOCK).faults())
                .extracting(Fault::code)
                .containsExactly("not-csv");
        assertThat(read(PARTS + "x,1,2,3,4,5\n", STOCK).faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("parts row 3, column 6", "not-csv"));
        assertThat(read("id,length,length\na,1,2\n", STOCK).faults())
                .extracting(Fault::pointer, Fault::code)
                .contains(tuple("parts row 1, column length", "duplicate-field"));
    }

    /** OWASP, "CSV Injection": cells that start so are taken for formulas. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx"})
    void textCannotBecomeAFormula(String text) {
        assertThat(CsvText.guarded(text)).startsWith("'");
        assertThat(CsvText.unguarded(CsvText.guarded(text))).isEqualTo(text);
        String csv = CsvText.write(List.of("note"), List.of(List.of(CsvText.guarded(text))));
        assertThat(csv.split("\r\n", 2)[1]).matches("(?s)\"?'.*");
    }

    @Test
    void aZoneMeasuredFromOneEdgeOnlyReachesTheOther() {
        String json =
                "{\"parts\": [{\"length\": 40, \"width\": 3, \"thickness\": 1}], \"onHand\": [{\"length\": 50, \"width\": 6, \"thickness\": 1, \"zones\":"
                        + " [{\"from\": 1, \"to\": 2, \"toEdge\": 2}, {\"from\": 5, \"to\": 6, \"fromEdge\": 4}]}]}";
        List<Zone> zones = new JobReader().read(json).orThrow().onHand().get(0).zones();
        assertThat(zones.get(0).fromEdge()).isEqualTo(Length.ZERO);
        assertThat(zones.get(1).toEdge()).isEqualTo(Length.inches("6"));
    }
}
