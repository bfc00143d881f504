package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.generate.RandomJobs;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.Violation;

/** Pieces beyond the stop are measured; common practice, no source. */
class StopReachTest {

    private static final Length REACH = Length.inches("48");
    private static final Effort SMALL = new Effort(60_000L, 60, 1, 1);

    private static Job bench(Length reach) {
        Job job = JobBuilder.inches("bench")
                .boardTrim("1/2", "1/4")
                .part("rail", 3, "60", "3-1/2", "1-1/2")
                .part("slat", 6, "20", "3-1/2", "1-1/2")
                .part(
                        "beam",
                        2,
                        "52",
                        new Section.Measured(Length.inches("3"), Length.inches("1.25")),
                        new Making.Milled("milled"))
                .board("2x4-8", "2x4", "96", "3.98")
                .effort(SMALL)
                .build();
        return job.withShop(job.shop().withStopReach(reach));
    }

    private static List<SetUp> stops(CuttingPlan plan) {
        return plan.derived().cutSequence().stream()
                .map(SequenceStep::setUp)
                .filter(setUp -> setUp != null && setUp.machine().equals("crosscut"))
                .distinct()
                .toList();
    }

    private static List<String> causes(Job job, CuttingPlan plan, UnaryOperator<SequenceStep> change) {
        List<SequenceStep> steps = new ArrayList<>();
        int moves = 0;
        java.util.Map<String, Length> standing = new java.util.HashMap<>();
        for (SequenceStep step : plan.derived().cutSequence()) {
            SequenceStep changed = change.apply(step);
            steps.add(changed);
            SetUp setUp = changed.setUp();
            moves += setUp != null && !setUp.stop().equals(standing.put(setUp.machine(), setUp.stop())) ? 1 : 0;
        }
        Derived d = plan.derived();
        CuttingPlan other = new CuttingPlan(
                plan.header(),
                plan.cost(),
                plan.objective(),
                plan.layouts(),
                plan.unplaced(),
                plan.certificate(),
                List.of(),
                new Derived(d.buyingList(), d.offcuts(), steps, moves, d.yield(), d.warnings()));
        return PlanChecker.check(job, other).stream()
                .map(Violation::cause)
                .distinct()
                .toList();
    }

    private static SequenceStep at(SequenceStep s, SetUp setUp) {
        return new SequenceStep(
                s.step(),
                s.kind(),
                setUp,
                s.board(),
                s.cut(),
                s.piece(),
                s.behind(),
                s.caution(),
                s.reason(),
                s.shape());
    }

    @Test
    void longerPiecesAreMeasuredAndCountNoSetUp() {
        CuttingPlan far = new Optimizer().plan(bench(null));
        CuttingPlan near = new Optimizer().plan(bench(REACH));
        assertThat(near.layouts()).isEqualTo(far.layouts());
        assertThat(stops(far)).extracting(SetUp::stop).anyMatch(stop -> stop.isMoreThan(REACH));
        assertThat(stops(near)).isNotEmpty().extracting(SetUp::stop).noneMatch(stop -> stop.isMoreThan(REACH));
        assertThat(near.derived().setUps()).isLessThan(far.derived().setUps());
        assertThat(near.derived().cutSequence())
                .filteredOn(step -> step.setUp() == null
                        && (step.kind() == StepKind.CROSSCUT || step.kind() == StepKind.FINAL_TRIM)
                        && step.piece() != null
                        && Set.of("rail", "beam").contains(step.piece().part()))
                .isNotEmpty()
                .allMatch(step -> step.reason() != null && step.reason().contains("measured"));
    }

    @Test
    void theCheckerKnowsHowFarTheStopReaches() {
        Job job = bench(REACH);
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(causes(job, plan, step -> step)).isEmpty();
        assertThat(causes(
                        job,
                        plan,
                        s -> s.kind() == StepKind.CROSSCUT
                                        && s.setUp() == null
                                        && s.piece() != null
                                        && s.piece().part().equals("rail")
                                ? at(s, new SetUp("crosscut", Length.inches("60")))
                                : s))
                .containsExactly("sequence");
        assertThat(causes(
                        job,
                        plan,
                        s -> s.setUp() != null && s.setUp().stop().equals(Length.inches("20")) ? at(s, null) : s))
                .containsExactly("sequence");
        assertThat(causes(
                        job,
                        plan,
                        s -> s.piece() != null
                                        && s.piece().part().equals("beam")
                                        && s.setUp() == null
                                        && s.cut() != null
                                        && s.cut().to() == null
                                ? at(s, new SetUp("crosscut", Length.inches("52")))
                                : s))
                .containsExactly("sequence");
    }

    @Test
    void randomJobsPassTheCheckerWithAShortStop() {
        int measured = 0;
        for (long seed = 7_000; seed < 7_060; seed++) {
            Job plain = RandomJobs.job(seed);
            Length reach = Length.inches("1").times(10 + new Random(seed).nextInt(40));
            Job job = plain.withShop(plain.shop().withStopReach(reach)).withEffort(SMALL);
            if (!JobReview.review(job).isEmpty()) {
                continue;
            }
            CuttingPlan plan = new Optimizer().plan(job);
            assertThat(stops(plan))
                    .as("seed %d", seed)
                    .noneMatch(setUp -> setUp.stop().isMoreThan(reach));
            measured += plan.derived().cutSequence().stream()
                            .anyMatch(step ->
                                    step.reason() != null && step.reason().contains("measured"))
                    ? 1
                    : 0;
        }
        assertThat(measured).as("plans with a measured piece").isGreaterThan(10);
    }

    @Test
    void aStopThatReachesNothingIsAFault() {
        assertThat(JobReview.review(bench(Length.ZERO)))
                .extracting(fault -> fault.pointer())
                .containsExactly("/shop/stopReach");
    }
}
