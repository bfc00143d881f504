package org.stockcutting.bench.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.stockcutting.bench.instances.Instance;

/** Solves many jobs, at most two at a time, and tells their rows in the order of the jobs, however they end. */
final class YieldRun {

    /** More solves at a time would wait for memory and for each other, and their seconds would mean nothing. */
    static final int MOST_AT_A_TIME = 2;

    private final Trial trial;
    private final int atATime;

    YieldRun(Trial trial, int atATime) {
        this.trial = trial;
        this.atATime = Math.min(MOST_AT_A_TIME, Math.max(1, atATime));
    }

    /**
     * Solves the jobs.
     *
     * @param instances the jobs
     * @param rows hears of each row that was not cut short, in the order of the jobs
     * @throws InterruptedException if this thread is told to stop waiting
     */
    void run(List<Instance> instances, Consumer<Row> rows) throws InterruptedException {
        ExecutorService workers = Executors.newFixedThreadPool(atATime);
        try {
            List<Future<Optional<Row>>> running = new ArrayList<>();
            instances.forEach(instance -> running.add(workers.submit(() -> trial.run(instance))));
            for (Future<Optional<Row>> each : running) {
                each.get().ifPresent(rows);
            }
        } catch (ExecutionException e) {
            throw new IllegalStateException("a measurement broke: " + e.getCause(), e.getCause());
        } finally {
            workers.shutdownNow();
        }
    }
}
