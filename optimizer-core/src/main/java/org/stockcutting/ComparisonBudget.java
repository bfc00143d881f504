package org.stockcutting;

import org.stockcutting.job.Effort;
import org.stockcutting.solve.Budget;

/**
 * Shares the effort of a comparison. Everything together gets what a plan gets, so that it is as good; all other searches share
 * {@link #OTHERS} percent of what that took, each the same amount, fixed before they start. They are smaller, and start where it ended.
 */
final class ComparisonBudget {

    /** What all other searches may take, in percent of the first one. */
    private static final long OTHERS = 150;
    /** Steps that a search always gets, unless a plan does not: where the first one ended at once, the others mostly do too. */
    private static final long LEAST = 20_000;
    /** The default guard is for one plan; a comparison takes a few times as long. */
    private static final int GUARD = 3;

    private static final long SECOND = 1_000_000_000L;

    private final Effort effort;
    private final Budget first;
    private final long deadline;
    private long work;
    private long nanos;

    ComparisonBudget(Effort effort) {
        this.effort = effort;
        Budget plan = Budget.of(effort);
        this.first =
                plan.clockOnly() ? new Budget(plan.work(), plan.nanos() / 2, true, plan.seed(), plan.threads()) : plan;
        long guard = effort.seconds() == null ? GUARD * Effort.DEFAULT_SECONDS * SECOND : plan.nanos();
        this.deadline = System.nanoTime() + guard;
    }

    /** For everything together. */
    Budget first() {
        return first;
    }

    /** Fixes what each of the other searches may take; what the first one took beyond its limit they take beyond theirs. */
    void share(long usedByFirst, int searches) {
        int count = Math.max(1, searches);
        work = Math.max(Math.min(LEAST, first.work()), Math.min(usedByFirst, first.work()) / 100 * OTHERS / count);
        nanos = Math.max(1, deadline - System.nanoTime()) / count;
    }

    /** For the next of the others. */
    Budget next() {
        return first.clockOnly()
                ? new Budget(Long.MAX_VALUE, nanos, true, effort.seed(), first.threads())
                : new Budget(work, Math.max(1, deadline - System.nanoTime()), false, effort.seed(), first.threads());
    }
}
