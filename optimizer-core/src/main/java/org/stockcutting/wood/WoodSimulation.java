package org.stockcutting.wood;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;

/**
 * Simulates purchases of a planned job: how often do the plan's number of boards suffice, how often one more, and so on.
 *
 * <p>Each trial draws every board from its {@link KnotModel} and asks whether all parts can be cut from them. Trials have their own seed,
 * so neither the number of threads nor the order of work changes the answer.
 */
public final class WoodSimulation {

    /** Most boards beyond the plan that are tried for one group. */
    static final int MOST_MORE = 60;
    /** A group is not followed further once it finishes in this share of the trials, or what the job needs. */
    private static final BigDecimal ENOUGH = new BigDecimal("0.99");

    private final Job job;
    private final Planning planning;
    private final CancelToken cancel;
    private final long seed;
    private final int trials;

    /**
     * @param job the job; its {@code wood} says how sure to be, its effort gives seed and threads
     * @param planning the planner, asked where a quick look cannot tell
     * @param cancel gives the simulation up
     */
    public WoodSimulation(Job job, Planning planning, CancelToken cancel) {
        this.job = job;
        this.planning = planning;
        this.cancel = cancel;
        this.seed = job.effort().seed();
        this.trials = job.wood().trials();
    }

    /**
     * How many boards to take.
     *
     * @param plan a plan of this job that places every part
     * @throws IllegalArgumentException if the plan leaves parts out: more of the same boards would not help
     * @throws CancellationException if it was cancelled
     */
    public WoodRisk run(CuttingPlan plan) {
        Status status = plan.header().status();
        if (status != Status.OPTIMAL && status != Status.FEASIBLE) {
            throw new IllegalArgumentException("the plan leaves parts out (" + status.word()
                    + "), so no number of boards is sure: first add stock that all parts can come from");
        }
        List<Group> groups = Grouping.of(job, plan);
        List<Outcome> outcomes = new ArrayList<>();
        for (Group group : groups) {
            List<KnotModel> models =
                    group.bought().stream().map(new Models(job)::of).toList();
            outcomes.add(new Outcome(group, models, leastMore(group, models, groups.size())));
        }
        return new Choice(job, outcomes).risk();
    }

    /** Of each trial: the least number of boards beyond the plan that finishes it, or a great number. */
    private int[] leastMore(Group group, List<KnotModel> models, int groups) {
        Trials trial = new Trials(job, group, models, seed, planning);
        int most = Math.min(MOST_MORE, group.spare(group.extra()));
        int[] least = new int[trials];
        Arrays.fill(least, Integer.MAX_VALUE);
        for (int more = 0; more <= most; more++) {
            int number = more;
            int[] open = IntStream.range(0, trials)
                    .filter(t -> least[t] == Integer.MAX_VALUE)
                    .toArray();
            boolean[] finished = spread(open, t -> trial.finishes(t, number));
            for (int i = 0; i < open.length; i++) {
                least[open[i]] = finished[i] ? number : Integer.MAX_VALUE;
            }
            if (isEnough(least, groups)) {
                break;
            }
        }
        return least;
    }

    private boolean isEnough(int[] least, int groups) {
        long open =
                Arrays.stream(least).filter(more -> more == Integer.MAX_VALUE).count();
        BigDecimal failing = BigDecimal.valueOf(open);
        BigDecimal all = BigDecimal.valueOf(trials);
        BigDecimal share = BigDecimal.ONE.subtract(job.wood().confidence());
        return failing.compareTo(all.multiply(BigDecimal.ONE.subtract(ENOUGH))) <= 0
                && failing.multiply(BigDecimal.valueOf(groups)).compareTo(all.multiply(share)) <= 0;
    }

    private interface Question {
        boolean ask(int trial);
    }

    private boolean asked(Question question, int trial) {
        if (cancel.isCancelled()) {
            throw new CancellationException("cancelled before all purchases were simulated");
        }
        return question.ask(trial);
    }

    private boolean[] spread(int[] open, Question question) {
        boolean[] answers = new boolean[open.length];
        int threads = Math.min(job.effort().threads(), Math.max(1, open.length));
        if (threads == 1) {
            for (int i = 0; i < open.length; i++) {
                answers[i] = asked(question, open[i]);
            }
            return answers;
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> tasks = new ArrayList<>();
            for (int first = 0; first < threads; first++) {
                int start = first;
                tasks.add(pool.submit(() -> {
                    for (int i = start; i < open.length; i += threads) {
                        answers[i] = asked(question, open[i]);
                    }
                }));
            }
            for (Future<?> task : tasks) {
                task.get();
            }
            return answers;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while purchases were simulated", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof CancellationException cancelled) {
                throw cancelled;
            }
            throw new IllegalStateException("a simulated purchase failed", e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }
}
