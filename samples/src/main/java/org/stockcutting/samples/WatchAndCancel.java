package org.stockcutting.samples;

import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;

/** Can my program show plans while they get better, and stop when it has seen enough? */
public final class WatchAndCancel {

    private WatchAndCancel() {}

    static String answer() {
        JobBuilder builder = JobBuilder.inches("Forty shelves").material("pine");
        for (int i = 0; i < 40; i++) {
            builder.part("shelf " + i, 3, 20 + i + "-" + (1 + 2 * (i % 8)) + "/16", "1x6");
        }
        Job job = builder.board("1x6-8", "1x6", "8'", "9.80")
                .board("1x6-12", "1x6", "12'", "14.20")
                .build();
        StringBuilder out = new StringBuilder();
        CancelToken cancel = new CancelToken();
        // With one thread the listener is called by the thread that plans: it may use what is around it.
        CuttingPlan plan = new Optimizer()
                .plan(
                        job,
                        job.effort(),
                        progress -> {
                            CuttingPlan best = progress.best();
                            if (best != null && !cancel.isCancelled()) {
                                out.append("a plan for ").append(best.cost()).append(": good enough\n");
                                cancel.cancel();
                            }
                        },
                        cancel);
        out.append("kept: ").append(plan.cost()).append('\n');
        out.append("parts without wood: ").append(plan.unplaced().size()).append('\n');
        out.append("stopped: ").append(plan.header().stopReason().word()).append('\n');
        out.append("same again next time: ")
                .append(plan.header().reproducible())
                .append('\n');
        return out.toString();
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
