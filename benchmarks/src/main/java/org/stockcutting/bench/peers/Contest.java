package org.stockcutting.bench.peers;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stockcutting.Optimizer;
import org.stockcutting.OtherPlan;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.Progress;
import org.stockcutting.solve.SmallJob;
import org.stockcutting.solve.SolvedComponent;

/**
 * Runs every method on a job, one after the other, each for the same time. Loading of native code and building of solvers happen before
 * the clocks start.
 */
final class Contest {

    static final String OURS = "ours";

    private final List<Peer> peers;
    private final Optimizer optimizer = new Optimizer();
    private final int seconds;
    private final long seed;

    Contest(List<Peer> peers, int seconds, long seed) {
        this.peers = List.copyOf(peers);
        this.seconds = seconds;
        this.seed = seed;
    }

    /** All methods that are compared with ours. */
    static List<Peer> everyone() {
        return List.of(Greedy.firstFit(), Greedy.bestFit(), new OptaPeer(), new AssignmentPeer(), new ArcFlowPeer());
    }

    List<String> methods() {
        List<String> methods = new ArrayList<>();
        methods.add(OURS);
        peers.forEach(peer -> methods.add(peer.name()));
        return methods;
    }

    /** Results of all methods, ours first. */
    List<Result> run(PeerJobs.Named named) {
        Job job = JobOrder.of(named.job()).sorted();
        List<Result> results = new ArrayList<>();
        Result ours = ours(named, job);
        results.add(ours);
        for (Peer peer : peers) {
            results.add(other(named, job, peer).withBound(ours.bound()));
        }
        return results;
    }

    private Result ours(PeerJobs.Named named, Job job) {
        News news = new News();
        long start = System.nanoTime();
        CuttingPlan plan = optimizer.plan(
                job,
                new Effort(null, seconds, seed, 1),
                progress -> news.hear(progress, since(start)),
                new CancelToken());
        double end = since(start);
        boolean complete = plan.unplaced().isEmpty();
        Objective objective = plan.objective();
        // News comes a few times a second at most, so this is never too early, but may be too late.
        double toBest = news.timeOf(objective.value(), end);
        BigInteger bound = objective.searchedBound() == null ? objective.bound() : objective.searchedBound();
        return new Result(
                named.name(),
                named.kind(),
                OURS,
                complete ? Result.Outcome.COMPLETE : Result.Outcome.PARTIAL,
                complete ? objective.value() : null,
                complete ? bound : null,
                complete && objective.value().equals(bound),
                toBest,
                end,
                complete ? "" : plan.unplaced().size() + " parts left out");
    }

    /** The last value that was heard of, and when it was first. */
    private static final class News {
        private BigInteger value = BigInteger.ZERO;
        private double seconds = -1;

        synchronized void hear(Progress progress, double now) {
            BigInteger heard = progress.value();
            CuttingPlan best = progress.best();
            boolean complete = best != null && best.unplaced().isEmpty();
            if (complete && heard != null && (seconds < 0 || !heard.equals(value))) {
                value = heard;
                seconds = now;
            }
        }

        synchronized double timeOf(BigInteger last, double end) {
            return seconds >= 0 && value.equals(last) ? seconds : end;
        }
    }

    private Result other(PeerJobs.Named named, Job job, Peer peer) {
        List<SmallJob> parts = SmallJob.of(job);
        for (SmallJob part : parts) {
            Optional<String> why = peer.declines(part.instance());
            if (why.isPresent()) {
                return result(named, peer, Result.Outcome.DECLINED, null, false, 0, 0, why.get());
            }
        }
        long pieces = parts.stream().mapToLong(SmallJob::pieces).sum();
        parts.forEach(part -> peer.prepare(share(part, pieces), seed));
        List<SolvedComponent> solved = new ArrayList<>();
        boolean proved = true;
        double toBest = 0;
        long start = System.nanoTime();
        for (SmallJob part : parts) {
            double begun = since(start);
            Peer.Found found = peer.solve(part.instance(), share(part, pieces), seed);
            proved &= found.proved() && part.isExact();
            toBest = begun + found.nanosToBest() / 1e9;
            solved.add(part.solved(found.uses()));
        }
        double end = since(start);
        OtherPlan.Checked checked = OtherPlan.of(job, solved);
        if (!checked.violations().isEmpty()) {
            String text = checked.violations().get(0).text();
            return result(named, peer, Result.Outcome.REFUSED, null, false, toBest, end, text);
        }
        CuttingPlan plan = checked.plan();
        if (!plan.unplaced().isEmpty()) {
            Result.Outcome outcome = plan.layouts().isEmpty() ? Result.Outcome.NOTHING : Result.Outcome.PARTIAL;
            String remark = plan.unplaced().size() + " parts left out";
            return result(named, peer, outcome, null, false, toBest, end, remark);
        }
        BigInteger value = plan.objective().value();
        return result(named, peer, Result.Outcome.COMPLETE, value, proved, toBest, end, "");
    }

    private long share(SmallJob part, long pieces) {
        return seconds * 1_000_000_000L * part.pieces() / Math.max(1, pieces);
    }

    private static Result result(
            PeerJobs.Named named,
            Peer peer,
            Result.Outcome outcome,
            @Nullable BigInteger value,
            boolean proved,
            double toBest,
            double end,
            String remark) {
        return new Result(named.name(), named.kind(), peer.name(), outcome, value, null, proved, toBest, end, remark);
    }

    private static double since(long start) {
        return (System.nanoTime() - start) / 1e9;
    }
}
