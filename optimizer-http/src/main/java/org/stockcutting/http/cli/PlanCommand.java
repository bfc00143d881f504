package org.stockcutting.http.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
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
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Plans a job and prints what to buy and how to cut it. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Prints the buying list and the cutting plan of a job.")
final class PlanCommand extends JobCommand {

    private final Planner planner;

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
        JobReading reading = reading();
        Job job = accepted(reading);
        try (KeepBest keepBest = new KeepBest()) {
            return plan(reading, job, size, keepBest.token());
        }
    }

    private Integer plan(JobReading reading, Job job, @Nullable Paper size, CancelToken cancel) {
        CuttingPlan plan = plan(job, effort(job), cancel);
        String document = new PlanWriter(job).write(plan, reading.defaults());
        if (out != null) {
            new OutputFolder(out, size == null ? Paper.of(job) : size, png).write(job, plan, document);
        }
        answer(json() ? document : new PlanText(job).print(plan));
        return PlanText.isComplete(plan) ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
    }

    private CuttingPlan plan(Job job, Effort wanted, CancelToken cancel) {
        ProgressLine line = System.console() == null ? null : new ProgressLine(job, errors());
        try {
            return asked(() -> planner.plan(job, wanted, line == null ? ProgressListener.NONE : line, cancel));
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
        throw new ParameterException(commandLine(), "Unknown paper '" + paper + "': --paper takes letter or a4.");
    }
}
