package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stockcutting.JobRefusedException;
import org.stockcutting.http.Planner;
import org.stockcutting.http.print.PlanText;
import org.stockcutting.http.print.paper.Paper;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plans a job and prints what to buy and how to cut it. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Prints the buying list and the cutting plan of a job.")
final class PlanCommand implements Callable<Integer> {

    private final Planner planner;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "JOB", description = "Job document (JSON).")
    private List<Path> documents = new ArrayList<>();

    @Mixin
    private JobSource source = new JobSource();

    @Mixin
    private EffortOptions effort = new EffortOptions();

    @Option(names = "--json", description = "Print the plan document and nothing else.")
    private boolean json;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description =
                    "Also write to DIR: plan.json; buying-list, cut-sequence, pieces and offcuts as CSV; one SVG for each"
                            + " layout; plan.pdf and labels.pdf to print.")
    private @Nullable Path out;

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            description = "Paper of the PDF files, letter or a4; without it Letter for inches, A4 for metric jobs.")
    private @Nullable String paper;

    @Option(names = "--png", description = "With --out: also one PNG picture for each layout.")
    private boolean png;

    PlanCommand(Planner planner) {
        this.planner = planner;
    }

    @Override
    public Integer call() {
        Paper size = wantedPaper();
        JobReading reading = source.read(documents);
        Job job = source.accepted(reading, documents);
        try (KeepBest keepBest = new KeepBest()) {
            return plan(reading, job, size, keepBest.token());
        }
    }

    private Integer plan(JobReading reading, Job job, @Nullable Paper size, CancelToken cancel) {
        CuttingPlan plan = plan(job, effort.over(job.effort()), cancel);
        String document = new PlanWriter(job).write(plan, reading.defaults());
        if (out != null) {
            new OutputFolder(out, size == null ? Paper.of(job) : size, png).write(job, plan, document);
        }
        printer().print(json ? document : new PlanText(job).print(plan));
        printer().flush();
        return PlanText.isComplete(plan) ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
    }

    private CuttingPlan plan(Job job, Effort wanted, CancelToken cancel) {
        ProgressLine line = System.console() == null ? null : new ProgressLine(job, errors());
        try {
            return planner.plan(job, wanted, line == null ? ProgressListener.NONE : line, cancel);
        } catch (JobRefusedException e) {
            throw new RefusedException(source.name(documents), e.faults());
        } finally {
            if (line != null) {
                line.end();
            }
        }
    }

    private @Nullable Paper wantedPaper() {
        if (paper == null) {
            return null;
        }
        for (Paper size : Paper.values()) {
            if (size.word().equalsIgnoreCase(paper)) {
                return size;
            }
        }
        throw new ParameterException(
                java.util.Objects.requireNonNull(spec).commandLine(),
                "Unknown paper '" + paper + "': --paper takes letter or a4.");
    }

    private PrintWriter printer() {
        return java.util.Objects.requireNonNull(spec).commandLine().getOut();
    }

    private PrintWriter errors() {
        return java.util.Objects.requireNonNull(spec).commandLine().getErr();
    }
}
