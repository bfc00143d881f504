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
        List<Instance> jobs = Generated.of("plywood-50:10", 1).subList(6, 10);
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
        assertThat(proved).hasSizeGreaterThanOrEqualTo(3);
    }
}
