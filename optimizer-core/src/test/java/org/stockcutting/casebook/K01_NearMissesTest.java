package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.NearMiss;
import org.stockcutting.plan.Violation;

/**
 * K: near misses, worked out by hand. Along one line the sum of (part + kerf) is at most usable + kerf: four shelves of L in from 96 in
 * with a kerf of 1/8 in need 4 L + 3/8, so 24 in is 3/32 in too long. No published source; the arithmetic is in each case.
 */
class K01_NearMissesTest {

    private static final String BOARD = "{id: b, length: 96, width: 6, thickness: 1, price: {amount: '4'}}";
    private static final String SHEET =
            "{id: s, form: sheet, length: 96, width: 48, thickness: 1, price: {amount: '64'}}";

    private static CuttingPlan plan(String parts, String stock) {
        return Door.plan("parts: [" + parts + "], stock: [" + stock + "], effort: {work: 400000}");
    }

    private static String part(String id, int quantity, String length, String width, String tolerance) {
        return "{id: " + id + ", quantity: " + quantity + ", length: '" + length + "', width: '" + width
                + "', thickness: 1, grain: length, tolerance: '" + tolerance + "'}";
    }

    private static String misses(CuttingPlan plan) {
        return plan.derived().nearMisses().stream()
                .map(miss ->
                        miss.part() + " " + miss.side().word() + " " + miss.by().nanometres() / 396_875L + "/64 boards "
                                + miss.boards() + " sheets " + miss.sheets() + " places " + miss.places() + " saves "
                                + miss.saves()
                                + (miss.smallest() ? " smallest" : ""))
                .collect(Collectors.joining("; "));
    }

    /** 6/64 = 3/32 in each; 5/64 each would still be 1/16 in too long in all. */
    @Test
    void fourShelvesFromEightFeet() {
        CuttingPlan plan = plan(part("shelf", 4, "24", "6", "1/8"), BOARD);
        assertThat(Door.boards(plan)).isEqualTo("b x2");
        assertThat(misses(plan)).isEqualTo("shelf length 6/64 boards 1 sheets 0 places 0 saves 4.00 USD smallest");
    }

    @Test
    void nothingIsSaidWhereTheToleranceIsTooSmall() {
        assertThat(misses(plan(part("shelf", 4, "24", "6", "5/64"), BOARD))).isEmpty();
        assertThat(misses(plan(part("shelf", 4, "24", "6", "0"), BOARD))).isEmpty();
    }

    /** 97 in from 96 in: exactly one inch too long, and then no cut is needed at all. */
    @Test
    void aPartThatIsLongerThanAnyStock() {
        CuttingPlan plan = plan(part("rail", 1, "97", "6", "1-1/4") + ", " + part("block", 1, "10", "6", "0"), BOARD);
        assertThat(Door.missing(plan)).startsWith("1 rail: longer-than-any-stock");
        assertThat(misses(plan)).isEqualTo("rail length 64/64 boards -1 sheets 0 places 1 saves -4.00 USD smallest");
    }

    /** Two rows of doors 24 in wide need 48-1/8: each 1/16 in narrower, and one sheet does. */
    @Test
    void aSheetLess() {
        CuttingPlan plan = plan(part("door", 2, "90", "24", "1/4"), SHEET);
        assertThat(Door.boards(plan)).isEqualTo("s x2");
        assertThat(misses(plan)).isEqualTo("door width 4/64 boards 0 sheets 1 places 0 saves 64.00 USD smallest");
    }

    /** Only one line may give way: 50 + 46 + 1/8 from 96 in; each line alone can. */
    @Test
    void eachLineForItself() {
        CuttingPlan plan = plan(part("a", 1, "50", "6", "1/4") + ", " + part("b", 1, "46", "6", "1"), BOARD);
        assertThat(misses(plan))
                .isEqualTo("a length 8/64 boards 1 sheets 0 places 0 saves 4.00 USD smallest;"
                        + " b length 8/64 boards 1 sheets 0 places 0 saves 4.00 USD smallest");
    }

    /** A metric job goes in tenths: three of 800 mm and two kerfs of 3.2 mm from 2400 mm are 6.4 mm too long, 2.2 mm each (2.1333). */
    @Test
    void tenthsOfAMillimetre() {
        CuttingPlan plan = Door.plan("unit: mm, currency: EUR, shop: {kerf: {crosscut: '3.2', rip: '3.2'}},"
                + " parts: [{id: a, quantity: 3, length: 800, width: 100, thickness: 20, tolerance: 5}],"
                + " stock: [{id: b, length: 2400, width: 100, thickness: 20, price: {amount: '4'}}]");
        List<NearMiss> misses = plan.derived().nearMisses();
        assertThat(misses).hasSize(1);
        assertThat(misses.get(0).by().nanometres()).isEqualTo(2_200_000L);
        assertThat(misses.get(0).smallest()).isTrue();
    }

    /** What a document claims beyond the tolerance, or without a gain, is refused; what was written is read back. */
    @Test
    void documentsCarryThemAndTheCheckerLooksAtThem() {
        Job job = Door.job("parts: [" + part("shelf", 4, "24", "6", "1/8") + "], stock: [" + BOARD + "]");
        CuttingPlan plan = new org.stockcutting.Optimizer().plan(job);
        String text = new PlanWriter(job).write(plan, new java.util.TreeMap<>());
        PlanReading reading = new PlanReader(job).read(text);
        assertThat(reading.orThrow()).isEqualTo(plan);
        assertThat(text).contains("\"by\" : \"3/32\"".replace(" :", ":"));
        String tooMuch = text.replace("\"by\": \"3/32\"", "\"by\": \"5/32\"");
        assertThat(PlanChecker.check(job, new PlanReader(job).read(tooMuch).orThrow()))
                .extracting(Violation::cause)
                .containsExactly("near-miss");
        String noGain = text.replace("\"saves\": \"4.00\"", "\"saves\": \"0.00\"");
        assertThat(PlanChecker.check(job, new PlanReader(job).read(noGain).orThrow()))
                .extracting(Violation::cause)
                .containsExactly("near-miss");
    }
}
