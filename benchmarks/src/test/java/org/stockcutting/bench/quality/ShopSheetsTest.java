package org.stockcutting.bench.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.bench.instances.Generated;
import org.stockcutting.bench.instances.Instance;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Status;

/** Big sheet jobs as a cabinet shop has them, in as little work as they may take. */
final class ShopSheetsTest {

    private static final long STEPS = 8_000_000;

    /**
     * Fifty types, 300 pieces, 96 x 48 in: the last sheet is found by dives, not by search. Dives that fix the most used pattern and come
     * after long searches prove two of these four in as many steps.
     */
    @Test
    void mostOfFourJobsOfFiftyTypesAreProvedOptimal() {
        assertThat(proved(Generated.of("plywood-50:10", 1).subList(6, 10))).hasSizeGreaterThanOrEqualTo(3);
    }

    /**
     * Two sizes of sheets on small saws, few of each: short dives for what may be bought, one purchase after the other. Two of these four
     * where each purchase's programme begins anew and every dive ends in a search.
     */
    @Test
    void mostOfFourJobsOnSmallSawsAreProvedOptimal() {
        List<Instance> jobs = Generated.of("saws-20:10", 1);
        assertThat(proved(List.of(jobs.get(3), jobs.get(7), jobs.get(8), jobs.get(9))))
                .hasSizeGreaterThanOrEqualTo(3);
    }

    private static List<String> proved(List<Instance> jobs) {
        List<String> proved = new ArrayList<>();
        for (Instance instance : jobs) {
            Effort effort = new Effort(STEPS, 3_600, 1, 1);
            Job job = instance.job().withEffort(effort);
            CuttingPlan plan = new Optimizer().plan(job, effort, ProgressListener.NONE, new CancelToken());
            assertThat(plan.unplaced()).isEmpty();
            assertThat(plan.objective().value())
                    .isGreaterThanOrEqualTo(plan.objective().bound());
            if (plan.header().status() == Status.OPTIMAL) {
                proved.add(instance.file());
            }
        }
        return proved;
    }
}
