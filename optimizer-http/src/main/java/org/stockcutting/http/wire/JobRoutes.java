package org.stockcutting.http.wire;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.stockcutting.JobRefusedException;
import org.stockcutting.Optimizer;
import org.stockcutting.WorklogRefusedException;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.draw.LayoutDrawing;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.http.PlanDocuments;
import org.stockcutting.http.Planner;
import org.stockcutting.http.print.BoardGroup;
import org.stockcutting.http.print.ComparisonPage;
import org.stockcutting.http.print.ComparisonPicture;
import org.stockcutting.http.print.SvgPrinter;
import org.stockcutting.http.print.paper.Paper;
import org.stockcutting.http.print.paper.PlanPdf;
import org.stockcutting.io.BuyingListWriter;
import org.stockcutting.io.CheckWriter;
import org.stockcutting.io.ComparisonWriter;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.EnoughWriter;
import org.stockcutting.io.GradesWriter;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.io.ReplanWriter;
import org.stockcutting.io.ReviewWriter;
import org.stockcutting.io.WorklogReader;
import org.stockcutting.io.WorklogReading;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Worklog;
import org.stockcutting.wood.GradeMixes;

/** The routes that take a job. */
final class JobRoutes {

    private static final String JSON = "application/json";
    private static final String CSV = "text/csv";
    private static final String PDF = "application/pdf";
    private static final String SVG = "image/svg+xml";
    private static final String HTML = "text/html";
    private static final String TABLE = "text/csv; charset=utf-8; header=present";

    private final Planner planner;
    private final SolveGate gate;
    private final JobReader jobs = new JobReader();
    private final Optimizer optimizer = new Optimizer();

    JobRoutes(Planner planner, SolveGate gate) {
        this.planner = planner;
        this.gate = gate;
    }

    /** A job in, its plan out: as a document, as pages to print, as a picture of all layouts, or as a table of pieces. */
    void plan(Context ctx) {
        ctx.header("Vary", "Accept");
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON, PDF, SVG, CSV));
        JobReading reading = reading(ctx);
        Job job = accepted(reading);
        switch (type) {
            case PDF ->
                file(ctx, PDF, "plan.pdf", planned(job, plan -> PlanPdf.plan(job, printable(plan), Paper.of(job))));
            case SVG -> file(ctx, SVG, "plan.svg", planned(job, plan -> layouts(job, printable(plan))));
            case CSV -> file(ctx, TABLE, "pieces.csv", planned(job, plan -> utf8(CsvTables.pieces(job, plan))));
            default -> answer(ctx, type, planned(job, plan -> new PlanWriter(job).write(plan, reading.defaults())));
        }
    }

    /** A job in, what to buy out: as a document, as a page to print, or as a table. */
    void buyingList(Context ctx) {
        ctx.header("Vary", "Accept");
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON, CSV, PDF));
        Job job = accepted(reading(ctx));
        switch (type) {
            case PDF ->
                file(ctx, PDF, "buying-list.pdf", planned(job, plan -> PlanPdf.buyingList(job, plan, Paper.of(job))));
            case CSV ->
                file(ctx, TABLE, "buying-list.csv", planned(job, plan -> utf8(CsvTables.buyingList(job, plan))));
            default -> answer(ctx, type, planned(job, plan -> BuyingListWriter.write(job, plan)));
        }
    }

    /** A job in, what each choice of its stock comes to out: as a document, a table, a picture or a page. */
    void compare(Context ctx) {
        ctx.header("Vary", "Accept");
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON, CSV, HTML, SVG));
        Job job = accepted(reading(ctx));
        Comparison comparison = compared(job);
        if (type.equals(CSV)) {
            ctx.header("Content-Disposition", "attachment; filename=\"comparison.csv\"");
            answer(ctx, TABLE, CsvTables.comparison(job, comparison));
        } else if (type.equals(SVG)) {
            ctx.header("Content-Disposition", "attachment; filename=\"comparison.svg\"");
            ctx.contentType(SVG).result(new ComparisonPicture(job).svg(comparison));
        } else if (type.equals(HTML)) {
            ctx.header("Content-Disposition", "attachment; filename=\"comparison.html\"");
            answer(ctx, "text/html; charset=utf-8", new ComparisonPage(job).print(comparison));
        } else {
            answer(ctx, type, new ComparisonWriter(job).write(comparison));
        }
    }

    /** A job in, how many boards to take to be sure out. */
    void chances(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        Job job = accepted(reading(ctx));
        answer(ctx, type, planned(job, plan -> new Chances(optimizer).document(job, plan)));
    }

    /** A job in, what it costs from each grade for sale and from mixes out. All its plans together take about the effort of one. */
    void grades(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        Job job = accepted(reading(ctx));
        Effort each = shared(sync(job.effort()), ServiceSettings.SYNC_MIXES);
        answer(
                ctx,
                type,
                solved(() -> Chances.simulated(job.withEffort(each), (bounded, late) -> {
                    GradeMixes grades = optimizer.grades(bounded, bounded.effort(), late);
                    if (grades.families().isEmpty()) {
                        throw new ProblemException(
                                Refusals.faulty(
                                        List.of(
                                                new Fault(
                                                        "/stock",
                                                        FaultCode.NO_STOCK.word(),
                                                        "no part with a choice of grades",
                                                        "two grades for sale that serve the same part",
                                                        "No part could come from two grades for sale; give stock a grade, and parts no grades or several."))));
                    }
                    return GradesWriter.write(job, grades);
                })));
    }

    /** A job in, whether its boards on hand are enough yet out. All its plans together take the effort of one. */
    void enough(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        Job job = accepted(reading(ctx));
        int boards = job.onHand().size();
        if (boards > ServiceSettings.SYNC_BOARDS) {
            String most = "at most " + ServiceSettings.SYNC_BOARDS;
            throw new ProblemException(Refusals.faulty(List.of(new Fault(
                    "/onHand",
                    FaultCode.TOO_MANY.word(),
                    String.valueOf(boards),
                    most,
                    "While the sender waits " + most
                            + " entries on hand are gone through; send fewer, or use the command line."))));
        }
        Effort whole = sync(job.effort());
        Effort each = shared(whole, boards);
        answer(ctx, type, solved(() -> EnoughWriter.write(job, optimizer.enough(job, each, cancelledAfter(whole)))));
    }

    /** The effort of one plan, for each of several. */
    private static Effort shared(Effort whole, int plans) {
        Long work = whole.work();
        return new Effort(
                work == null ? null : Math.max(1, work / Math.max(1, plans)),
                whole.seconds(),
                whole.seed(),
                whole.threads());
    }

    /** One clock over several plans. */
    private static CancelToken cancelledAfter(Effort effort) {
        CancelToken cancel = new CancelToken();
        long seconds = effort.seconds() == null ? ServiceSettings.SYNC_SECONDS : effort.seconds();
        CompletableFuture.delayedExecutor(seconds, TimeUnit.SECONDS).execute(cancel::cancel);
        return cancel;
    }

    /** A job and a plan in, what does not hold out. */
    void check(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        Map<String, String> body = documents(ctx, List.of("job", "plan"));
        Job job = job(jobs.read(body.getOrDefault("job", "")));
        CuttingPlan plan = plan(job, body);
        answer(ctx, type, gate.solve(() -> CheckWriter.write(PlanChecker.check(job, plan))));
    }

    /** A job, its plan and what has happened in, what is left to do and its plan out. */
    void replan(Context ctx) {
        String type = Accepted.choose(ctx.header("Accept"), List.of(JSON));
        Map<String, String> body = documents(ctx, List.of("job", "plan", "worklog"));
        JobReading reading = jobs.read(body.getOrDefault("job", ""));
        Job job = job(reading);
        CuttingPlan plan = plan(job, body);
        WorklogReading log = new WorklogReader(job).read(body.getOrDefault("worklog", ""));
        Worklog worklog = log.worklog();
        if (worklog == null) {
            throw new ProblemException(Refusals.of(Refusals.below("/worklog", log.faults())));
        }
        Effort effort = halved(sync(job.effort()));
        Replan replan = gate.solve(() -> {
            try {
                return optimizer.replan(job, plan, worklog, effort, new CancelToken());
            } catch (WorklogRefusedException e) {
                throw new ProblemException(Refusals.faulty(Refusals.below("/worklog", e.faults())));
            } catch (JobRefusedException e) {
                throw new ProblemException(Refusals.faulty(Refusals.below("/job", e.faults())));
            }
        });
        answer(ctx, type, ReplanWriter.write(job, replan, reading.defaults()));
    }

    /** Replanning may try for about twice its effort. */
    private static Effort halved(Effort effort) {
        Integer seconds = effort.seconds();
        return new Effort(
                effort.work(), seconds == null ? null : Math.max(1, seconds / 2), effort.seed(), effort.threads());
    }

    private static Map<String, String> documents(Context ctx, List<String> names) {
        return BodyDocuments.of(RequestBody.json(ctx, ServiceSettings.CHECK_BYTES), names);
    }

    private static Job job(JobReading reading) {
        Job job = reading.job();
        if (job == null) {
            throw new ProblemException(Refusals.of(Refusals.below("/job", reading.faults())));
        }
        return job;
    }

    private static CuttingPlan plan(Job job, Map<String, String> body) {
        PlanReading read = PlanDocuments.reader(job).read(body.getOrDefault("plan", ""));
        CuttingPlan plan = read.plan();
        if (plan == null) {
            throw new ProblemException(Refusals.of(Refusals.below("/plan", read.faults())));
        }
        return plan;
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

    /** Plans a job and makes something of the plan, both within one turn of the gate: printing takes its time too. */
    private <T> T planned(Job job, Function<CuttingPlan, T> then) {
        Effort effort = sync(job.effort());
        return solved(() -> then.apply(planner.plan(job, effort, ProgressListener.NONE, new CancelToken())));
    }

    private Comparison compared(Job job) {
        Effort effort = sync(job.effort());
        return solved(() -> planner.compare(job, effort, new CancelToken()));
    }

    private <T> T solved(Supplier<T> work) {
        return gate.solve(() -> {
            try {
                return work.get();
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

    private static CuttingPlan printable(CuttingPlan plan) {
        int layouts = plan.layouts().size();
        if (layouts > ServiceSettings.PRINTED_LAYOUTS) {
            throw new ProblemException(
                    ProblemKind.TOO_MANY_PAGES,
                    "The plan has " + layouts + " different layouts; at most " + ServiceSettings.PRINTED_LAYOUTS
                            + " are printed at once. Ask for " + JSON + " or " + CSV
                            + ", split the job, or use the command line.");
        }
        return plan;
    }

    private static byte[] layouts(Job job, CuttingPlan plan) {
        LayoutPainter painter = new LayoutPainter(job);
        return SvgPrinter.print(LayoutDrawing.stacked(BoardGroup.of(plan).stream()
                .map(group -> painter.drawing(group.layout(), group.first()))
                .toList()));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static void file(Context ctx, String type, String name, byte[] bytes) {
        ctx.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
        ctx.contentType(type).result(bytes);
    }

    private static void answer(Context ctx, String type, String text) {
        ctx.contentType(type).result(text.getBytes(StandardCharsets.UTF_8));
    }
}
