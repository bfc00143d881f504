package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.Optimizer;
import org.stockcutting.http.print.GradesText;
import org.stockcutting.io.GradesWriter;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.wood.GradeMixes;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What a job costs from each grade of wood for sale, and from mixes of them. */
@Command(
        name = "grades",
        mixinStandardHelpOptions = true,
        description = "Compares the grades for sale: what each and mixes of them cost with enough boards to be sure.")
final class GradesCommand implements Callable<Integer> {

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

    @Override
    public Integer call() {
        Job read = source.accepted(source.read(documents), documents);
        Job job = read.withEffort(effort.over(read.effort()));
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        GradeMixes grades = new Optimizer().grades(job, job.effort(), new CancelToken());
        if (grades.mixes().isEmpty() || grades.mixes().get(0).grades().isEmpty()) {
            PrintWriter errors = spec.commandLine().getErr();
            errors.println(
                    "No part could come from two grades for sale: give stock a grade, and parts no grades or several.");
            errors.flush();
            return ExitStatus.INCOMPLETE;
        }
        out.print(json ? GradesWriter.write(job, grades) : new GradesText(job).print(grades));
        out.flush();
        return grades.best() < 0 ? ExitStatus.INCOMPLETE : ExitStatus.DONE;
    }
}
