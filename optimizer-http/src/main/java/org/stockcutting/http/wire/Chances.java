package org.stockcutting.http.wire;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BiFunction;
import org.stockcutting.Optimizer;
import org.stockcutting.http.print.PlanText;
import org.stockcutting.io.RiskWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;

/** How many boards to take to be sure, while the sender waits: the plan has its own limit, the simulated purchases one as long. */
final class Chances {

    private final Optimizer optimizer;

    Chances(Optimizer optimizer) {
        this.optimizer = optimizer;
    }

    /**
     * The document.
     *
     * @throws ProblemException 422 if the plan leaves parts out, or if so many purchases are not simulated in time
     */
    String document(Job job, CuttingPlan plan) {
        if (!plan.derived().estimates().isEmpty()) {
            throw new ProblemException(Refusals.faulty(List.of(estimated(plan))));
        }
        if (!PlanText.isComplete(plan)) {
            throw new ProblemException(Refusals.faulty(plan.unplaced().stream()
                    .map(unplaced -> leftOut(job, unplaced))
                    .toList()));
        }
        return simulated(job, (bounded, late) -> RiskWriter.write(job, plan, optimizer.sure(bounded, plan, late)));
    }

    /**
     * What is simulated with no more threads than there are cores, before the sender has waited too long.
     *
     * @throws ProblemException 422 if so many purchases are not simulated in time
     */
    static String simulated(Job job, BiFunction<Job, CancelToken, String> simulation) {
        Effort effort = job.effort();
        int threads = Math.min(effort.threads(), Runtime.getRuntime().availableProcessors());
        Job bounded = job.withEffort(new Effort(effort.work(), effort.seconds(), effort.seed(), threads));
        CancelToken late = new CancelToken();
        CompletableFuture<Void> clock = CompletableFuture.runAsync(
                late::cancel, CompletableFuture.delayedExecutor(ServiceSettings.SYNC_SECONDS, TimeUnit.SECONDS));
        try {
            return simulation.apply(bounded, late);
        } catch (CancellationException e) {
            throw new ProblemException(
                    Refusals.faulty(List.of(tooMany(job.wood().trials()))));
        } finally {
            clock.cancel(false);
        }
    }

    private static Fault leftOut(Job job, Unplaced unplaced) {
        int line = 0;
        while (!job.parts().get(line).id().equals(unplaced.part())) {
            line++;
        }
        return new Fault(
                "/parts/" + line,
                FaultCode.PARTS_LEFT_OUT.word(),
                unplaced.reason().word(),
                "stock that every part can come from",
                "The plan leaves out " + unplaced.quantity() + " of \"" + unplaced.part()
                        + "\", so no number of boards is sure: " + unplaced.remedy() + ".");
    }

    private static Fault estimated(CuttingPlan plan) {
        return new Fault(
                "/stock",
                FaultCode.PARTS_LEFT_OUT.word(),
                plan.derived().estimates().get(0).stock(),
                "stock of fixed sizes, or measured boards",
                "Some parts come from boards of random size; how much of them to buy to be sure stands in the plan, under"
                        + " estimates.");
    }

    private static Fault tooMany(int trials) {
        return new Fault(
                "/wood/trials",
                FaultCode.OUT_OF_RANGE.word(),
                Integer.toString(trials),
                "as many as are simulated in " + ServiceSettings.SYNC_SECONDS + " seconds",
                "While the sender waits, simulated purchases may take " + ServiceSettings.SYNC_SECONDS
                        + " seconds, and " + trials + " took longer; ask for fewer, or use the command line.");
    }
}
