package org.stockcutting.bench.quality;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stockcutting.JobRefusedException;
import org.stockcutting.Optimizer;
import org.stockcutting.bench.instances.Instance;
import org.stockcutting.io.JobWriter;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;

/** Solves one job after the other, each on one thread. Safe to share between threads. */
final class Trial {

    private static final double NANOS = 1e9;

    private final Optimizer optimizer = new Optimizer();
    private final Effort effort;
    private final CancelToken cancel;
    private final @Nullable Path plans;

    /**
     * @param effort effort of every job, on one thread
     * @param cancel stops what is running
     * @param plans folder that jobs and plans are written to, or null
     */
    Trial(Effort effort, CancelToken cancel, @Nullable Path plans) {
        this.effort = effort;
        this.cancel = cancel;
        this.plans = plans;
    }

    /** Solves a job; empty if it was cut short by the cancel, since such a row would say nothing. */
    Optional<Row> run(Instance instance) {
        if (cancel.isCancelled()) {
            return Optional.empty();
        }
        Job job = instance.job().withEffort(effort);
        long start = System.nanoTime();
        try {
            CuttingPlan plan = optimizer.plan(job, effort, ProgressListener.NONE, cancel);
            double seconds = (System.nanoTime() - start) / NANOS;
            if (plan.header().stopReason() == StopReason.CANCELLED) {
                return Optional.empty();
            }
            write(instance, job, plan);
            return Optional.of(row(instance, plan, seconds));
        } catch (JobRefusedException e) {
            return Optional.of(failed(instance, Objects.toString(e.getMessage(), "refused"), start));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            // Whatever broke, the other jobs are still worth measuring; the run fails in the end and names it.
            return Optional.of(failed(instance, e.toString(), start));
        }
    }

    private Row row(Instance instance, CuttingPlan plan, double seconds) {
        Objective objective = plan.objective();
        boolean none = plan.header().status() == Status.NO_PLAN;
        return new Row(
                instance.file(),
                instance.group(),
                objective.goal().word(),
                pieces(instance.job()),
                none ? null : objective.value(),
                objective.bound(),
                objective.searchedBound(),
                instance.known(),
                plan.header().status().word(),
                plan.header().stopReason().word(),
                plan.unplaced().stream().mapToInt(Unplaced::quantity).sum(),
                seconds,
                plan.header().work(),
                limit(),
                effort.seed(),
                plan.derived().yield().ratio().doubleValue(),
                Shares.of(plan.derived().yield()),
                StockUse.of(instance.job(), plan),
                "");
    }

    private Row failed(Instance instance, String why, long start) {
        return new Row(
                instance.file(),
                instance.group(),
                instance.job().goal().word(),
                pieces(instance.job()),
                null,
                null,
                null,
                instance.known(),
                Row.FAILED,
                "",
                pieces(instance.job()),
                (System.nanoTime() - start) / NANOS,
                0,
                limit(),
                effort.seed(),
                0,
                Shares.NONE,
                List.of(),
                why.replaceAll("\\s+", " "));
    }

    private String limit() {
        Long work = effort.work();
        if (work == null && effort.seconds() != null) {
            return effort.seconds() + " s";
        }
        return (work == null ? Effort.DEFAULT_WORK : work) + " steps";
    }

    private static int pieces(Job job) {
        return job.parts().stream().mapToInt(job::demand).sum();
    }

    /** Job and plan side by side, as the command {@code check} of the service wants them. */
    private void write(Instance instance, Job job, CuttingPlan plan) {
        if (plans == null) {
            return;
        }
        String name = (instance.group() + "/" + instance.file()).replaceAll("[^A-Za-z0-9.=-]+", "_");
        try {
            Files.createDirectories(plans);
            Files.writeString(plans.resolve(name + ".job.json"), JobWriter.write(job), StandardCharsets.UTF_8);
            Files.writeString(
                    plans.resolve(name + ".plan.json"),
                    new PlanWriter(job).write(plan, instance.defaults()),
                    StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
