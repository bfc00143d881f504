package org.stockcutting.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.management.ManagementFactory;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.WoodModel;
import org.stockcutting.job.WoodRules;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CuttingPlan;

/** The chance to finish: against closed forms, against itself, and against the true chance behind it. */
class WoodSimulationTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    private static WoodRules wood(int trials, String run, String zone, String check, String unusable) {
        WoodModel model = new WoodModel(
                "pine",
                null,
                Length.inches(run),
                Length.inches(zone),
                Length.inches(check),
                new BigDecimal(unusable),
                BigDecimal.ZERO,
                BigDecimal.ZERO);
        return new WoodRules(new BigDecimal("0.9"), trials, List.of(model));
    }

    private static JobBuilder shelf(WoodRules rules) {
        return JobBuilder.inches("shelf")
                .material("pine")
                .wood(rules)
                .part("long", 4, "30", "2x4")
                .part("middle", 5, "22", "2x4")
                .part("short", 6, "9", "2x4")
                .board("2x4-8", "2x4", "8'", "4.00");
    }

    private static WoodRisk risk(Job job) {
        return OPTIMIZER.sure(job, OPTIMIZER.plan(job));
    }

    private static Job threads(Job job, int threads) {
        return job.withEffort(new Effort(100_000L, null, job.effort().seed(), threads));
    }

    @Test
    void woodWithoutDefectsNeedsExactlyThePlansNumber() {
        WoodRules flawless = wood(200, "10", "0", "0", "0");
        Job ripped = JobBuilder.inches("ripped")
                .material("pine")
                .wood(flawless)
                .part("strip", 7, "31", "1-1/4", "3/4")
                .part("board", 3, "40", "5", "3/4")
                .board("1x6-8", "1x6", "8'", "7.00")
                .build();
        for (Job job : List.of(shelf(flawless).build(), threads(ripped, 1))) {
            CuttingPlan plan = OPTIMIZER.plan(job);
            WoodRisk risk = OPTIMIZER.sure(job, plan);
            assertThat(risk.chance().share()).isEqualByComparingTo("1");
            assertThat(risk.reached()).isTrue();
            assertThat(risk.goesBack().finished()).isZero();
            int bought = plan.derived().buyingList().stream()
                    .mapToInt(line -> line.quantity())
                    .sum();
            assertThat(risk.groups().stream().mapToInt(GroupRisk::needed).sum()).isEqualTo(bought);
            assertThat(risk.groups()).allSatisfy(group -> {
                assertThat(group.take()).isZero();
                assertThat(group.rows()).hasSize(1);
                assertThat(group.rows().get(0).chance().finished()).isEqualTo(200);
            });
        }
    }

    /** Only whole boards fail, each with chance 0.2: the boards that serve are binomial. */
    @Test
    void unusableBoardsFollowTheBinomialDistribution() {
        Job job = JobBuilder.inches("beams")
                .material("pine")
                .wood(wood(4_000, "10", "0", "0", "0.2"))
                .part("beam", 6, "90", "2x4")
                .board("2x4-8", "2x4", "8'", "4.00")
                .build();
        GroupRisk group = risk(job).groups().get(0);
        assertThat(group.needed()).isEqualTo(6);
        assertThat(group.rows()).hasSizeGreaterThan(3);
        for (GroupRisk.Row row : group.rows()) {
            double exact = 1 - new BinomialDistribution(row.boards(), 0.8).cumulativeProbability(5);
            assertThat(row.chance().share().doubleValue())
                    .as("%d boards, seed %d", row.boards(), job.effort().seed())
                    .isCloseTo(exact, org.assertj.core.data.Offset.offset(0.025));
        }
    }

    /** The sum of two exponential checks is Erlang: P(sum <= s) = 1 - exp(-s/m) (1 + s/m). */
    @Test
    void checkedEndsFollowTheErlangDistribution() {
        Job job = JobBuilder.inches("one")
                .material("pine")
                .wood(wood(20_000, "10", "0", "2", "0"))
                .part("beam", 1, "92", "2x4")
                .board("2x4-8", "2x4", "8'", "4.00")
                .build();
        double ratio = 4.0 / 2.0;
        double exact = 1 - Math.exp(-ratio) * (1 + ratio);
        Chance first = risk(job).groups().get(0).rows().get(0).chance();
        // Checks are rounded up to sixteenths of an inch, so the chance is a little smaller.
        assertThat(first.share().doubleValue()).isBetween(exact - 0.025, exact + 0.01);
    }

    @Test
    void theChanceNeverFallsWithMoreBoardsAndThreadsChangeNothing() {
        for (long seed = 1; seed <= 5; seed++) {
            Job job = shelf(wood(150, "24", "2", "1", "0.05"))
                    .effort(new Effort(100_000L, null, seed, 1))
                    .build();
            CuttingPlan plan = OPTIMIZER.plan(job);
            WoodRisk risk = OPTIMIZER.sure(job, plan);
            List<GroupRisk.Row> rows = risk.groups().get(0).rows();
            for (int i = 1; i < rows.size(); i++) {
                assertThat(rows.get(i).chance().finished())
                        .as("seed %d, %d boards", seed, rows.get(i).boards())
                        .isGreaterThanOrEqualTo(rows.get(i - 1).chance().finished());
            }
            assertThat(risk.chance().share()).isGreaterThanOrEqualTo(risk.wanted());
            assertThat(OPTIMIZER.sure(threads(job, 3), plan))
                    .as("seed %d", seed)
                    .isEqualTo(risk);
        }
    }

    /** The true chance from 200,000 purchases; each of the seeds 1 to 1,000 states an interval of its own. */
    @Test
    void theIntervalCoversTheTrueChance() {
        Job job = shelf(wood(1, "40", "2", "1", "0.03")).build();
        Group group = Grouping.of(job, OPTIMIZER.plan(job)).get(0);
        KnotModel model = new Models(job).of(job.forSale().get(0));
        // The fewest boards more that give a fair chance.
        int more = 0;
        while (finished(job, group, model, 1, 100, more) < 50) {
            more++;
        }
        int many = 200_000;
        double truth = finished(job, group, model, 987_654_321L, many, more) / (double) many;
        assertThat(truth).as("a chance worth asking for").isBetween(0.3, 0.98);
        int trials = 100;
        int covered = 0;
        for (long seed = 1; seed <= 1_000; seed++) {
            Chance chance = Chance.of(finished(job, group, model, seed, trials, more), trials);
            boolean inside = chance.low().doubleValue() <= truth
                    && truth <= chance.high().doubleValue();
            covered += inside ? 1 : 0;
        }
        assertThat(covered).as("true chance %f, seeds 1 to 1000", truth).isGreaterThanOrEqualTo(930);
        System.out.println("coverage: " + covered + " of 1000 intervals cover the chance " + truth);
    }

    private static int finished(Job job, Group group, KnotModel model, long seed, int trials, int more) {
        Trials trial = new Trials(job, group, List.of(model), seed, (purchase, effort) -> false);
        return (int)
                IntStream.range(0, trials).filter(t -> trial.finishes(t, more)).count();
    }

    @Test
    void aThousandPurchasesOfThirtyPartsAreQuick() {
        JobBuilder builder = JobBuilder.inches("thirty").material("pine").wood(wood(1_000, "40", "2", "1", "0.03"));
        for (int i = 0; i < 30; i++) {
            builder.part("part " + i, 1, Integer.toString(10 + (i * 7) % 31), "2x4");
        }
        Job job = builder.board("2x4-8", "2x4", "8'", "4.00").build();
        CuttingPlan plan = OPTIMIZER.plan(threads(job, 1));
        // Time of this thread, not of the wall: other programs may be busy beside the test.
        long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        WoodRisk risk = OPTIMIZER.sure(threads(job, 1), plan);
        double seconds = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1e9;
        System.out.println("1,000 purchases of 30 parts: " + seconds + " s, take "
                + risk.groups().get(0).take() + " more, chance " + risk.chance());
        assertThat(seconds).isLessThan(20);
        assertThat(risk.reached()).isTrue();
    }

    @Test
    void aPlanThatLeavesPartsOutIsRefused() {
        Job job = JobBuilder.inches("long")
                .material("pine")
                .part("beam", 1, "200", "2x4")
                .board("2x4-8", "2x4", "8'", "4.00")
                .build();
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThatThrownBy(() -> OPTIMIZER.sure(job, plan)).hasMessageContaining("leaves parts out");
    }
}
