package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.JobRefusedException;
import org.stockcutting.Optimizer;
import org.stockcutting.http.print.EnoughText;
import org.stockcutting.io.EnoughWriter;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Enough;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says after each board on hand whether all parts have their wood now. */
@Command(
        name = "enough",
        mixinStandardHelpOptions = true,
        description =
                "Says after each board on hand which parts still have none, whether this is enough yet, and what is"
                        + " to spare. Nothing is bought. Exit status 1 says that it is not enough.")
final class EnoughCommand implements Callable<Integer> {

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
        Job job = source.accepted(source.read(documents), documents);
        try (KeepBest keepBest = new KeepBest()) {
            Enough enough = told(job, keepBest.token());
            PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
            out.print(json ? EnoughWriter.write(job, enough) : new EnoughText(job).print(enough));
            out.flush();
            return enough.atLast().isEnough() ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
        }
    }

    private Enough told(Job job, CancelToken cancel) {
        try {
            return new Optimizer().enough(job, effort.over(job.effort()), cancel);
        } catch (JobRefusedException e) {
            throw new RefusedException(source.name(documents), e.faults());
        }
    }
}
