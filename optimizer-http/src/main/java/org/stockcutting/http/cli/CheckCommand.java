package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.http.PlanDocuments;
import org.stockcutting.io.PlanReading;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Violation;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks any plan of a job, also one that was made by hand. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Recomputes everything a plan says from its job and lists what does not hold.")
final class CheckCommand implements Callable<Integer> {

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "1..2", paramLabel = "JOB PLAN", description = "Job document and plan document (JSON).")
    private List<Path> files = new ArrayList<>();

    @Mixin
    private JobSource source = new JobSource();

    @Override
    public Integer call() {
        CommandSpec own = Objects.requireNonNull(spec);
        if (!source.isTables() && files.size() < 2) {
            throw new ParameterException(own.commandLine(), "Name the job and the plan.");
        }
        List<Path> documents = files.subList(0, files.size() - 1);
        Path planFile = files.get(files.size() - 1);
        Job job = source.accepted(source.read(documents), documents);
        PlanReading reading = PlanDocuments.reader(job).read(InputFile.bytes(planFile));
        CuttingPlan plan = reading.plan();
        if (plan == null || !reading.faults().isEmpty()) {
            throw new RefusedException(planFile.toString(), reading.faults());
        }
        List<Violation> violations = PlanChecker.check(job, plan);
        PrintWriter out = own.commandLine().getOut();
        if (violations.isEmpty()) {
            out.println("The plan holds: every size, cut, count, price and bound was recomputed.");
        } else {
            out.println(violations.size() + (violations.size() == 1 ? " violation" : " violations"));
            for (Violation violation : violations) {
                out.println(("  " + violation.pointer() + "  " + violation.cause() + ": " + violation.text())
                        .replaceAll("\\p{Cntrl}", "?"));
            }
        }
        out.flush();
        return violations.isEmpty() ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
    }
}
