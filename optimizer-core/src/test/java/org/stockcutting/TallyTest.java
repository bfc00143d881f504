package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.JobWriter;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Tally;

/**
 * How yards count board feet.
 *
 * <p>Sources: 1 x 9 x 96 in are 6 board feet, 1-1/2 x 9 x 96 are 9 (woodworkingtips.com etip04). Surface measure is width in inches times
 * length in feet over 12 to the nearest whole foot, length in whole feet with fractions dropped, board feet are that times the thickness in
 * inches (NHLA rules as secondary sources report them; the length rule from memory); the board 2 x 6-1/4 in x 8 ft with a surface
 * measure of 4 and 8 board feet is the usual example of a guide to these rules, from memory. A yard that charges 5-1/2 wide as 6, the next foot
 * when over by 3 in, and the thickness at the next step is told of in woodworkingtalk.com thread 45954; widths to the next half inch at
 * exotic-woods.com/?p=288. Exact halves go up, as many yards have it (woodweb.com, Rounding Numbers when Figuring).
 */
class TallyTest {

    private static String text(String entry, String more) {
        return """
                {"name": "tally", "material": "ash", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}, "maxPlaning": "4"},%s
                 "parts": [{"id": "stick", "quantity": 2, "length": "10", "width": "1", "thickness": "1/2", "allowance": "skim"}],
                 "allowances": {"skim": {"thickness": "1/8"}},
                 "stock": [{"id": "board", %s}], "effort": {"work": 20000}}
                """.formatted(more, entry);
    }

    private static Job job(String thickness, String width, String length, String tally) {
        String entry = """
                "thickness": "%s", "width": "%s", "length": "%s", "tally": "%s", "price": {"amount": "1", "per": "board-foot"}""".formatted(thickness, width, length, tally);
        return new JobReader().read(text(entry, "")).orThrow();
    }

    /** At 1.00 a board foot the price is the board feet; the checker reckons them again by itself. */
    @ParameterizedTest
    @CsvSource({
        "1, 9, 96, exact, 6.00",
        "1-1/2, 9, 96, exact, 9.00",
        "1, 9, 96, surface-measure, 6.00",
        "2, 6-1/4, 96, surface-measure, 8.00",
        // 6-1/2 x 10 / 12 = 5.42 is 5; at 11 ft 11 in it is still 10 ft less one more: 6-1/2 x 11 / 12 = 5.96 is 6.
        "1, 6-1/2, 120, surface-measure, 5.00",
        "1-1/4, 6-1/2, 143, surface-measure, 7.50",
        // 9 x 10 / 12 = 7.5: an exact half goes up; a hair less goes down.
        "1, 9, 120, surface-measure, 8.00",
        "1, 8-63/64, 120, surface-measure, 7.00",
        "3/4, 9, 96, surface-measure, 6.00",
        "1, 5-1/2, 96, next-inch, 4.00",
        "1, 5-1/2, 99, next-inch, 4.00",
        "1, 5-1/2, 99-1/64, next-inch, 4.50",
        "1-1/16, 6, 96, next-inch, 5.00",
        "3/4, 6, 96, next-inch, 4.00",
        "1, 5-1/4, 96, half-inch, 3.67",
        "1, 5-1/2, 100, half-inch, 3.82"
    })
    void boardFeet(String thickness, String width, String length, String tally, String feet) {
        Job job = job(thickness, width, length, tally);
        assertThat(Bill.boardFeet(job.forSale().get(0))).hasToString(feet);
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.cost()).hasToString(feet + " USD");
        BuyingLine line = plan.derived().buyingList().get(0);
        assertThat(line.boardFeet()).hasToString(feet);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        Job other = job(thickness, width, length, tally.equals("exact") ? "half-inch" : "exact");
        boolean same = Bill.boardFeet(other.forSale().get(0)).toString().equals(feet);
        assertThat(PlanChecker.check(other, plan).stream().map(Violation::cause).anyMatch("buying-list"::equals))
                .isEqualTo(!same);
    }

    /** What a trade size names is billed by its name, whatever the yard's rule: ten feet of 2x6 are ten board feet. */
    @Test
    void tradeSizesAreBilledByName() {
        for (Tally tally : Tally.values()) {
            Job job = new JobReader()
                    .read(text(
                            "\"nominal\": \"2x6\", \"length\": \"119\", \"price\": {\"amount\": \"1\", \"per\": \"thousand-board-feet\"}",
                            " \"tally\": \"" + tally.word() + "\","))
                    .orThrow();
            assertThat(Bill.boardFeet(job.forSale().get(0))).hasToString("9.92");
        }
        // Quarters name a thickness only.
        Job quarters = new JobReader()
                .read(text(
                        "\"nominal\": \"5/4\", \"width\": \"5-1/2\", \"length\": \"96\", \"price\": {\"amount\": \"2\", \"per\": \"board-foot\"}",
                        " \"tally\": \"next-inch\","))
                .orThrow();
        assertThat(Bill.boardFeet(quarters.forSale().get(0))).hasToString("5.00");
        assertThat(Bill.price(quarters.forSale().get(0))).hasToString("10.00 USD");
    }

    /** Said for the job it holds for every entry that says nothing else; fit is by what is measured, a part of 5-3/4 has no board of 5-1/2. */
    @Test
    void theJobsRuleIsEachEntrysDefault() {
        String board =
                "\"width\": \"5-1/2\", \"thickness\": \"1\", \"length\": \"96\", \"price\": {\"amount\": \"1\", \"per\": \"board-foot\"}";
        String two =
                text(board + "}, {\"id\": \"other\", \"tally\": \"exact\", " + board, " \"tally\": \"next-inch\",");
        JobReading reading = new JobReader().read(two);
        Job job = reading.orThrow();
        assertThat(reading.defaults()).containsEntry("/stock/board/tally", "next-inch");
        assertThat(job.forSale())
                .extracting(item -> item.offer().tally())
                .containsExactly(Tally.NEXT_INCH, Tally.EXACT);
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow()).isEqualTo(job);
        assertThat(CsvTables.stock(job)).contains("tally").contains("next-inch");
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.derived().buyingList())
                .extracting(BuyingLine::stock, line -> line.boardFeet().toString())
                .containsExactly(tuple("other", "3.67"));
        Job wide = new JobReader()
                .read(two.replace("\"length\": \"10\", \"width\": \"1\"", "\"length\": \"10\", \"width\": \"5-3/4\""))
                .orThrow();
        assertThat(new Optimizer().plan(wide).unplaced()).isNotEmpty();
    }

    @Test
    void whatWouldCostNothingIsRefused() {
        String shortBoard = text(
                "\"width\": \"5\", \"thickness\": \"1\", \"length\": \"11\", \"price\": {\"amount\": \"1\", \"per\": \"board-foot\"}",
                " \"tally\": \"surface-measure\",");
        List<Fault> faults = new JobReader().read(shortBoard).faults();
        assertThat(faults).extracting(Fault::pointer, Fault::code).containsExactly(tuple("/stock/0/tally", "conflict"));
        String random = text(
                "\"form\": \"random\", \"leastLength\": \"60\", \"length\": \"90\", \"leastWidth\": \"4\", \"width\": \"8\", \"thickness\": \"1\", \"tally\": \"exact\"",
                "");
        assertThat(new JobReader().read(random).faults())
                .extracting(Fault::pointer, Fault::code)
                .contains(tuple("/stock/0/tally", "conflict"));
    }
}
