package org.stockcutting.samples;

import java.util.concurrent.atomic.AtomicInteger;
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
        CancelToken cancel = new CancelToken();
        AtomicInteger plans = new AtomicInteger();
        CuttingPlan plan = new Optimizer()
                .plan(
                        job,
                        job.effort(),
                        progress -> {
                            plans.incrementAndGet();
                            cancel.cancel();
                        },
                        cancel);
        return "heard of a plan: " + (plans.get() > 0) + "\nall parts placed: "
                + plan.unplaced().isEmpty() + "\nsame again next time: "
                + plan.header().reproducible() + "\n";
    }

    public static void main(String[] args) {
        System.out.print(answer());
    }
}
