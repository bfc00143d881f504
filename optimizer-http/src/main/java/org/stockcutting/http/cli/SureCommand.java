package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
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
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plans a job, then says how many boards to take so that real wood suffices. */
@Command(
        name = "sure",
        mixinStandardHelpOptions = true,
        description = "Says how many boards to take to be sure, with knots as they are to be expected.")
final class SureCommand implements Callable<Integer> {

    private final Planner planner;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "JOB", description = "Job document (JSON).")
    private List<Path> documents = new ArrayList<>();

    @Mixin
    private JobSource source = new JobSource();

    @Mixin
    private EffortOptions effort = new EffortOptions();

    @Option(names = "--json", description = "Print the answer as a document and nothing else.")
    private boolean json;

    SureCommand(Planner planner) {
        this.planner = planner;
    }

    @Override
    public Integer call() {
        Job read = source.accepted(source.read(documents), documents);
        Job job = read.withEffort(effort.over(read.effort()));
        CuttingPlan plan = planner.plan(job, job.effort(), ProgressListener.NONE, new CancelToken());
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        if (!plan.derived().estimates().isEmpty()) {
            PrintWriter errors = spec.commandLine().getErr();
            errors.println(
                    "Some parts come from boards of random size: 'plan' says how much of them to buy to be sure.");
            errors.flush();
            return ExitStatus.INCOMPLETE;
        }
        if (!PlanText.isComplete(plan)) {
            PrintWriter errors = spec.commandLine().getErr();
            errors.println("The plan leaves parts out, so no number of boards is sure: see what 'plan' says of them.");
            errors.flush();
            return ExitStatus.INCOMPLETE;
        }
        WoodRisk risk = new Optimizer().sure(job, plan);
        out.print(json ? RiskWriter.write(job, plan, risk) : new SureText(job).print(plan, risk));
        out.flush();
        return ExitStatus.DONE;
    }
}
