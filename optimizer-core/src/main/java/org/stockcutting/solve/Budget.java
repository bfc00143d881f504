package org.stockcutting.solve;

import org.stockcutting.job.Effort;

/**
 * How much work and time a whole job may take.
 *
 * @param work weighted steps, {@link Long#MAX_VALUE} where only the clock limits
 * @param nanos wall clock guard
 * @param clockOnly true if only the clock limits
 * @param seed seed of every random choice
 * @param threads threads that components may be spread over
 */
public record Budget(long work, long nanos, boolean clockOnly, long seed, int threads) {

    /** Fills in what an effort leaves open. */
    public static Budget of(Effort effort) {
        Long work = effort.work();
        Integer seconds = effort.seconds();
        boolean clockOnly = work == null && seconds != null;
        long limit = work != null ? work : clockOnly ? Long.MAX_VALUE : Effort.DEFAULT_WORK;
        long guard = seconds != null ? seconds : Effort.DEFAULT_SECONDS;
        return new Budget(limit, guard * 1_000_000_000L, clockOnly, effort.seed(), Math.max(1, effort.threads()));
    }

    /** The part of the work that a component with this share of all pieces may take, fixed before anything starts. */
    long workFor(long pieces, long allPieces, int components) {
        if (clockOnly) {
            return Long.MAX_VALUE;
        }
        long floor = work / (4L * components);
        double share = (double) pieces / Math.max(1, allPieces);
        return Math.max(1, floor + (long) ((work - floor * components) * share));
    }

    /** The part of the clock that a component may take, where only the clock limits; else the whole guard. */
    long nanosFor(long pieces, long allPieces, int components) {
        if (!clockOnly || components == 1) {
            return nanos;
        }
        double share = 0.25 / components + 0.75 * pieces / Math.max(1, allPieces);
        return (long) (nanos * Math.min(1.0, share * threads));
    }
}
