package org.stockcutting.http.wire;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.stockcutting.JobRefusedException;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.http.PlanDocuments;
import org.stockcutting.http.Planner;
import org.stockcutting.io.BuyingListWriter;
import org.stockcutting.io.CheckWriter;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.io.ReviewWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;

/** The routes that take a job. */
final class JobRoutes {

    private static final String JSON = "application/json";
    private static final String CSV = "text/csv";

    private final Planner planner;
    private final SolveGate gate;
    private final JobReader jobs = new JobReader();

    JobRoutes(Planner planner, SolveGate gate) {
        this.planner = planner;
        this.gate = gate;
    }

    /** A job in, its plan out. */
    void plan(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        JobReading reading = reading(ctx);
        Job job = accepted(reading);
        answer(ctx, type, new PlanWriter(job).write(planned(job), reading.defaults()));
    }

    /** A job in, what to buy out: as a document or as a table. */
    void buyingList(Context ctx) {
        ctx.header("Vary", "Accept");
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON, CSV));
        Job job = accepted(reading(ctx));
        CuttingPlan plan = planned(job);
        if (type.equals(CSV)) {
            ctx.header("Content-Disposition", "attachment; filename=\"buying-list.csv\"");
            answer(ctx, "text/csv; charset=utf-8; header=present", CsvTables.buyingList(job, plan));
        } else {
            answer(ctx, type, BuyingListWriter.write(job, plan));
        }
    }

    /** A job and a plan in, what does not hold out. */
    void check(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        CheckBody body = CheckBody.of(RequestBody.json(ctx, ServiceSettings.CHECK_BYTES));
        JobReading reading = jobs.read(body.job());
        Job job = reading.job();
        if (job == null) {
            throw new ProblemException(Refusals.of(Refusals.below("/job", reading.faults())));
        }
        PlanReading read = PlanDocuments.reader(job).read(body.plan());
        CuttingPlan plan = read.plan();
        if (plan == null) {
            throw new ProblemException(Refusals.of(Refusals.below("/plan", read.faults())));
        }
        answer(ctx, type, gate.solve(() -> CheckWriter.write(PlanChecker.check(job, plan))));
    }

    /** A job in, its faults out; a job with faults is a good question here. */
    void review(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        JobReading reading = reading(ctx);
        if (Refusals.isUnreadable(reading.faults())) {
            throw new ProblemException(Refusals.of(reading.faults()));
        }
        answer(ctx, type, ReviewWriter.write(reading.faults()));
    }

    private JobReading reading(Context ctx) {
        return jobs.read(RequestBody.json(ctx, ServiceSettings.JOB_BYTES));
    }

    private static Job accepted(JobReading reading) {
        Job job = reading.job();
        if (job == null) {
            throw new ProblemException(Refusals.of(reading.faults()));
        }
        return job;
    }

    private CuttingPlan planned(Job job) {
        Effort effort = sync(job.effort());
        return gate.solve(() -> {
            try {
                return planner.plan(job, effort, ProgressListener.NONE, new CancelToken());
            } catch (JobRefusedException e) {
                throw new ProblemException(Refusals.faulty(e.faults()));
            }
        });
    }

    /** The job's effort within what a waiting sender may ask for. Threads beyond the cores would only slow the others. */
    private static Effort sync(Effort effort) {
        Integer seconds = effort.seconds();
        if (seconds != null && seconds > ServiceSettings.SYNC_SECONDS) {
            String most = "at most " + ServiceSettings.SYNC_SECONDS;
            throw new ProblemException(Refusals.faulty(List.of(new Fault(
                    "/effort/seconds",
                    FaultCode.OUT_OF_RANGE.word(),
                    seconds.toString(),
                    most,
                    "While the sender waits a plan may take " + most
                            + " seconds; ask for less, or use the command line."))));
        }
        Long work = effort.work() == null && seconds == null ? Long.valueOf(Effort.DEFAULT_WORK) : effort.work();
        int threads = Math.min(effort.threads(), Runtime.getRuntime().availableProcessors());
        return new Effort(work, seconds == null ? ServiceSettings.SYNC_SECONDS : seconds, effort.seed(), threads);
    }

    private static void answer(Context ctx, String type, String text) {
        ctx.contentType(type).result(text.getBytes(StandardCharsets.UTF_8));
    }
}
