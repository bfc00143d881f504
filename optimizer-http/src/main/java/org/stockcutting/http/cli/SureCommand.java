package org.stockcutting.http.cli;

import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;
import org.stockcutting.http.print.PlanText;
import org.stockcutting.http.print.SureText;
import org.stockcutting.io.RiskWriter;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.wood.WoodRisk;
import picocli.CommandLine.Command;

/** Plans a job, then says how many boards to take so that real wood suffices. */
@Command(
        name = "sure",
        mixinStandardHelpOptions = true,
        description = "Says how many boards to take to be sure, with knots as they are to be expected.")
final class SureCommand extends JobCommand {

    private final Planner planner;

    SureCommand(Planner planner) {
        this.planner = planner;
    }

    @Override
    public Integer call() {
        Job job = job();
        CuttingPlan plan = asked(() -> planner.plan(job, job.effort(), ProgressListener.NONE, new CancelToken()));
        if (!plan.derived().estimates().isEmpty()) {
            return noAnswer(
                    "Some parts come from boards of random size: 'plan' says how much of them to buy to be sure.");
        }
        if (!PlanText.isComplete(plan)) {
            return noAnswer("The plan leaves parts out, so no number of boards is sure: see what 'plan' says of them.");
        }
        WoodRisk risk = new Optimizer().sure(job, plan);
        answer(json() ? RiskWriter.write(job, plan, risk) : new SureText(job).print(plan, risk));
        return ExitStatus.DONE;
    }
}
