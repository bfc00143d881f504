package org.stockcutting.solve.search;

import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/** Turns the engine's moves into steps of the meter and says when to stop. Used by one run, from its thread. */
final class MoveBudget {

    private final WorkMeter meter;
    private final long patience;
    private long counted;
    private long lastImproved;
    private boolean improved;
    private @Nullable Object best;

    /**
     * @param meter of the task
     * @param patience moves without any improvement after which the search gives up
     */
    MoveBudget(WorkMeter meter, long patience) {
        this.meter = meter;
        this.patience = patience;
    }

    /** True if no further move should be tried, after so many moves in all. */
    boolean isSpent(long moves, @Nullable Object bestScore) {
        if (bestScore != null && !bestScore.equals(best)) {
            // The first score seen is that of the start.
            improved |= best != null;
            best = bestScore;
            lastImproved = moves;
        }
        boolean goOn = meter.spend(Weights.SEARCH_MOVE * Math.max(0, moves - counted));
        counted = moves;
        return !goOn || moves - lastImproved >= patience;
    }

    /** True if anything better than the start was found. */
    boolean hasImproved() {
        return improved;
    }
}
