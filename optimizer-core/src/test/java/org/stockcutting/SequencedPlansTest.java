package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.generate.RandomJobs;
import org.stockcutting.generate.RandomShapings;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.Machines;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.Violation;

/** Cut sequences of a thousand random jobs: the checker saws each of them from the raw boards. */
class SequencedPlansTest {

    private static final int JOBS = 1_000;
    private static final long FEW_STEPS = 300;

    @Test
    void theSequencesOfAThousandRandomPlansYieldThePlans() {
        Map<StepKind, Integer> kinds = new EnumMap<>(StepKind.class);
        Optimizer optimizer = new Optimizer();
        int planned = 0;
        for (long seed = 1; planned < JOBS; seed++) {
            assertThat(seed).as("too many plans refused").isLessThan(JOBS + 10L);
            Job bare = seed % 3 == 0 ? brokenDown(RandomJobs.job(seed)) : RandomJobs.job(seed);
            Job job = (seed % 5 == 0 ? new RandomShapings(seed).shaped(bare) : bare)
                    .withEffort(new Effort(FEW_STEPS, null, 1, 1));
            CuttingPlan plan = planned(optimizer, job, seed);
            if (plan == null) {
                continue;
            }
            planned++;
            List<SequenceStep> steps = plan.derived().cutSequence();
            assertThat(PlanChecker.check(job, plan)).as("seed %d", seed).isEmpty();
            assertThat(plan.derived().setUps()).as("set-ups, seed %d", seed).isEqualTo(recount(steps));
            assertThat(freed(steps)).as("pieces freed, seed %d", seed).isEqualTo(sawnFree(plan));
            assertThat(steps.stream().anyMatch(step -> step.kind() == StepKind.REST))
                    .as("rests, seed %d", seed)
                    .isEqualTo(steps.stream().anyMatch(step -> step.kind() == StepKind.PLANE));
            steps.forEach(step -> kinds.merge(step.kind(), 1, Integer::sum));
        }
        assertThat(kinds.keySet()).containsExactlyInAnyOrder(StepKind.values());
    }

    /** The same shop with a saw of its own for the first cuts of sheets, where layouts leave it a kerf. */
    private static Job brokenDown(Job job) {
        Length kerf = job.shop().kerf().crosscut().min(job.shop().kerf().rip());
        Machines machines = new Machines(
                Machines.Machine.UNKNOWN, Machines.Machine.UNKNOWN, new Machines.Breakdown(kerf, Length.ZERO));
        return kerf.isPositive() ? job.withShop(job.shop().withMachines(machines)) : job;
    }

    /** Null where the checker refuses a plan for something else than its sequence: that is for other tests to find. */
    private static CuttingPlan planned(Optimizer optimizer, Job job, long seed) {
        try {
            return optimizer.plan(job);
        } catch (PlanRejectedException e) {
            assertThat(e.violations()).as("seed %d", seed).noneMatch(SequencedPlansTest::isOfSequence);
            return null;
        }
    }

    private static boolean isOfSequence(Violation violation) {
        return violation.cause().equals("sequence") || violation.cause().equals("set-ups");
    }

    /** Set-ups counted by their definition: whatever stands otherwise than the step wants it is moved. */
    private static int recount(List<SequenceStep> steps) {
        Map<String, Length> stands = new HashMap<>();
        int moved = 0;
        for (SequenceStep step : steps) {
            if (step.setUp() != null) {
                Length before = stands.put(step.setUp().machine(), step.setUp().stop());
                moved += step.setUp().stop().equals(before) ? 0 : 1;
            }
        }
        return moved;
    }

    private static long freed(List<SequenceStep> steps) {
        return steps.stream()
                .filter(step -> step.cut() != null && step.cut().to() != null)
                .mapToLong(step -> (step.piece() == null ? 0 : 1) + (step.behind() == null ? 0 : 1))
                .sum();
    }

    /** Every placed piece is sawn free, but those that are a board as it comes. */
    private static long sawnFree(CuttingPlan plan) {
        long pieces = 0;
        for (Layout layout : plan.layouts()) {
            for (PlacedPiece piece : layout.pieces()) {
                boolean whole = piece.extentX().equals(layout.length())
                        && piece.extentY().equals(layout.width());
                pieces += whole ? 0 : layout.repeat();
            }
        }
        return pieces;
    }
}
