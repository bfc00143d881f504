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
import org.stockcutting.WorklogRefusedException;
import org.stockcutting.http.PlanDocuments;
import org.stockcutting.http.print.PlanText;
import org.stockcutting.http.print.paper.Paper;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.io.ReplanWriter;
import org.stockcutting.io.WorklogReader;
import org.stockcutting.io.WorklogReading;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Worklog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plans what is left after a mishap. */
@Command(
        name = "replan",
        mixinStandardHelpOptions = true,
        description = "Plans what is left after a mishap: finished cuts stay, and as little as possible changes.")
final class ReplanCommand implements Callable<Integer> {

    private static final int MOST_DOCUMENTS = 3;

    @Spec
    private @Nullable CommandSpec spec;

    @Parameters(
            arity = "2..3",
            paramLabel = "JOB PLAN WORKLOG",
            description = "Job document, the plan that was followed, and what has happened since (JSON).")
    private List<Path> files = new ArrayList<>();

    @Mixin
    private JobSource source = new JobSource();

    @Mixin
    private EffortOptions effort = new EffortOptions();

    @Option(names = "--json", description = "Print the document and nothing else.")
    private boolean json;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Also write replan.json, job.json (what is left) and the files of its plan to DIR.")
    private @Nullable Path out;

    @Override
    public Integer call() {
        CommandSpec own = Objects.requireNonNull(spec);
        if (!source.isTables() && files.size() < MOST_DOCUMENTS) {
            throw new ParameterException(own.commandLine(), "Name the job, the plan and the worklog.");
        }
        List<Path> documents = files.subList(0, files.size() - 2);
        JobReading reading = source.read(documents);
        Job job = source.accepted(reading, documents);
        CuttingPlan plan = plan(job, files.get(files.size() - 2));
        Path logFile = files.get(files.size() - 1);
        Worklog worklog = worklog(job, logFile);
        try (KeepBest keepBest = new KeepBest()) {
            Replan replan = new Optimizer().replan(job, plan, worklog, effort.over(job.effort()), keepBest.token());
            return answer(own.commandLine().getOut(), reading, job, replan);
        } catch (WorklogRefusedException e) {
            throw new RefusedException(logFile.toString(), e.faults());
        } catch (JobRefusedException e) {
            throw new RefusedException("what is left of " + source.name(documents), e.faults());
        }
    }

    private static CuttingPlan plan(Job job, Path file) {
        PlanReading reading = PlanDocuments.reader(job).read(InputFile.bytes(file));
        CuttingPlan plan = reading.plan();
        if (plan == null || !reading.faults().isEmpty()) {
            throw new RefusedException(file.toString(), reading.faults());
        }
        return plan;
    }

    private static Worklog worklog(Job job, Path file) {
        WorklogReading reading = new WorklogReader(job).read(InputFile.bytes(file));
        Worklog worklog = reading.worklog();
        if (worklog == null) {
            throw new RefusedException(file.toString(), reading.faults());
        }
        return worklog;
    }

    private int answer(PrintWriter printer, JobReading reading, Job job, Replan replan) {
        String document = ReplanWriter.write(job, replan, reading.defaults());
        Job left = replan.job();
        CuttingPlan plan = replan.plan();
        if (out != null) {
            String own = left == null || plan == null ? null : new PlanWriter(left).write(plan, reading.defaults());
            new OutputFolder(out, Paper.of(job), false).write(replan, document, own);
        }
        if (json) {
            printer.print(document);
        } else {
            replan.notes().forEach(note -> printer.println(note.replaceAll("\\p{Cntrl}", "?")));
            if (left != null && plan != null) {
                printer.println();
                printer.print(new PlanText(left).print(plan));
            }
        }
        printer.flush();
        return plan == null || PlanText.isComplete(plan) ? ExitStatus.DONE : ExitStatus.INCOMPLETE;
    }
}
