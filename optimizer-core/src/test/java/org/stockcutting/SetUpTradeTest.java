package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobWriter;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Worklog;

/**
 * Money against set-ups. Worked by hand: four rails 40 x 3-1/2 come from one board 7-1/4 wide for $6.00, with the fence at 3-1/2 and the
 * stop at 40, or from two boards 3-1/2 wide for $8.00 with the stop at 40 alone. No published source; the arithmetic is here.
 */
class SetUpTradeTest {

    private static Job job(String price) {
        return job(price, 1, "cost");
    }

    private static Job job(String price, int threads, String goal) {
        return new JobReader()
                .read("""
                {"name": "rails", "material": "spruce", "goal": "GOAL", "setUpPrice": "PRICE",
                 "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
                 "parts": [{"id": "rail", "quantity": 4, "length": "40", "width": "3-1/2", "thickness": "1-1/2"}],
                 "stock": [{"id": "narrow", "nominal": "2x4", "length": "96", "price": {"amount": "4.00", "per": "piece"}},
                           {"id": "wide", "nominal": "2x8", "length": "96", "price": {"amount": "6.00", "per": "piece"}}],
                 "effort": {"work": 200000, "threads": THREADS}}
                """.replace("PRICE", price)
                        .replace("THREADS", Integer.toString(threads))
                        .replace("GOAL", goal))
                .orThrow();
    }

    private static List<String> rows(CuttingPlan plan) {
        return plan.derived().tradeOff().rows().stream()
                .map(row -> row.cost() + " " + row.setUps() + (row.chosen() ? " chosen" : ""))
                .toList();
    }

    @Test
    void cheapSetUpsBuyNothing() {
        CuttingPlan plan = new Optimizer().plan(job("1.00"));
        assertThat(rows(plan)).containsExactly("6.00 USD 2 chosen", "8.00 USD 1");
        assertThat(plan.cost()).hasToString("6.00 USD");
        assertThat(plan.header().status()).isEqualTo(Status.OPTIMAL);
    }

    /** 6 + 2 x 3 = 12 is more than 8 + 1 x 3 = 11; the bound stays that of the cost. */
    @Test
    void dearSetUpsAreSaved() {
        Job job = job("3.00");
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(rows(plan)).containsExactly("6.00 USD 2", "8.00 USD 1 chosen");
        assertThat(plan.cost()).hasToString("8.00 USD");
        assertThat(plan.derived().setUps()).isEqualTo(1);
        assertThat(plan.objective().bound()).isEqualTo(600);
        assertThat(plan.header().status()).isEqualTo(Status.FEASIBLE);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        assertThat(CsvTables.tradeOff(job, plan).lines())
                .containsExactly("cost,currency,setUps,together,chosen", "6.00,USD,2,12.00,no", "8.00,USD,1,11.00,yes");
    }

    /** Where both come to the same the cheaper one is taken: 6 + 2 x 2 = 8 + 1 x 2. */
    @Test
    void noMoreIsPaidForNothing() {
        assertThat(rows(new Optimizer().plan(job("2.00")))).containsExactly("6.00 USD 2 chosen", "8.00 USD 1");
    }

    @Test
    void nothingIsTradedWithoutAPrice() {
        Job plain = job("1.00");
        Job silent = plain.withShop(plain.shop().withSetUpPrice(null));
        assertThat(new Optimizer().plan(silent).derived().tradeOff()).isEqualTo(TradeOff.NONE);
    }

    @Test
    void documentsCarryPriceAndTable() {
        Job job = job("3.00");
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow()).isEqualTo(job);
        CuttingPlan plan = new Optimizer().plan(job);
        String text = new PlanWriter(job).write(plan, new TreeMap<>());
        CuttingPlan read = new PlanReader(job).read(text).orThrow();
        assertThat(read.derived().tradeOff()).isEqualTo(plan.derived().tradeOff());
        assertThat(new PlanWriter(job).write(new Optimizer().plan(job("3.00", 1, "cost")), new TreeMap<>()))
                .isEqualTo(text);
    }

    @Test
    void theSameOnAnyNumberOfThreads() {
        assertThat(new Optimizer().plan(job("3.00", 2, "cost")).layouts())
                .isEqualTo(new Optimizer().plan(job("3.00")).layouts());
    }

    /** Once boards are begun the rest is planned for money alone. */
    @Test
    void afterAMishapSetUpsAreNotWeighedAgain() {
        Job job = job("3.00");
        CuttingPlan plan = new Optimizer().plan(job);
        Worklog log = new Worklog(
                plan.header().jobHash(),
                List.of(1),
                List.of(new Worklog.Spoiled("rail", 1, null)),
                List.of(),
                List.of());
        Replan replan = new Optimizer().replan(job, plan, log);
        assertThat(replan.job().shop().setUpPrice()).isNull();
        assertThat(PlanChecker.check(replan.job(), replan.plan())).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"waste", "boards"})
    void onlyMoneyIsWeighed(String goal) {
        List<Fault> faults = new JobReader()
                .read(JobWriter.write(job("3.00"))
                        .replace("\"goal\" : \"cost\"", "\"goal\" : \"" + goal + "\"")
                        .replace("\"goal\": \"cost\"", "\"goal\": \"" + goal + "\""))
                .faults();
        assertThat(faults)
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(org.assertj.core.api.Assertions.tuple("/setUpPrice", "conflict"));
    }

    @Test
    void aSetUpIsWorthSomethingOrNothing() {
        assertThat(new JobReader()
                        .read(JobWriter.write(job("3.00")).replace("\"3\"", "\"-3\""))
                        .faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(org.assertj.core.api.Assertions.tuple("/setUpPrice", "negative"));
    }

    /** Every lie about the table is told apart by the checker. */
    @Test
    void aTableThatIsNoneIsRefused() {
        Job job = job("3.00");
        CuttingPlan plan = new Optimizer().plan(job);
        List<TradeOff.Row> rows = plan.derived().tradeOff().rows();
        List<List<TradeOff.Row>> lies = new ArrayList<>();
        lies.add(List.of(rows.get(1), rows.get(0)));
        lies.add(List.of(rows.get(0)));
        lies.add(List.of(chosen(rows.get(0), true), chosen(rows.get(1), false)));
        lies.add(List.of(chosen(rows.get(0), true), rows.get(1)));
        lies.add(List.of(new TradeOff.Row(rows.get(0).cost(), 1, false), rows.get(1)));
        for (List<TradeOff.Row> lie : lies) {
            CuttingPlan wrong = plan.withDerived(plan.derived().withTradeOff(new TradeOff(lie)));
            assertThat(PlanChecker.check(job, wrong))
                    .as(lie.toString())
                    .extracting(Violation::cause)
                    .contains("trade-off");
        }
        Job silent = job.withShop(job.shop().withSetUpPrice(null));
        assertThat(PlanChecker.check(silent, plan)).extracting(Violation::cause).contains("trade-off");
    }

    private static TradeOff.Row chosen(TradeOff.Row row, boolean chosen) {
        return new TradeOff.Row(row.cost(), row.setUps(), chosen);
    }
}
