package org.stockcutting.solve.instance;

import org.stockcutting.plan.CancelToken;

/**
 * Counts the work of one task in weighted steps and says when to stop. One step is about one microsecond of one core of 2026; all
 * weights stand in {@link Weights}. The clock and the cancel token are only guards: they make the answer not reproducible.
 */
public final class WorkMeter {

    private final long limit;
    private final long deadlineNanos;
    private final CancelToken cancel;
    private long used;
    private boolean cutShort;

    /**
     * @param limit steps allowed, {@link Long#MAX_VALUE} for none
     * @param deadlineNanos {@link System#nanoTime()} value at which to give up
     * @param cancel asked now and then
     */
    public WorkMeter(long limit, long deadlineNanos, CancelToken cancel) {
        this.limit = limit;
        this.deadlineNanos = deadlineNanos;
        this.cancel = cancel;
    }

    /** Adds steps; false once the task should stop. */
    public boolean spend(long steps) {
        used += steps;
        if (!cutShort && (cancel.isCancelled() || System.nanoTime() - deadlineNanos >= 0)) {
            cutShort = true;
        }
        return !isExhausted();
    }

    public boolean isExhausted() {
        return cutShort || used >= limit;
    }

    /** A meter for a part of this task: at most this many steps of what is left. Give its use back with {@link #absorb}. */
    public WorkMeter part(long steps) {
        return new WorkMeter(Math.min(steps, Math.max(0, limit - used)), deadlineNanos, cancel);
    }

    /** A part like {@link #part}; where only the clock limits, it ends after three quarters of the time that is left. */
    public WorkMeter head(long steps) {
        if (limit != Long.MAX_VALUE) {
            return part(steps);
        }
        long now = System.nanoTime();
        return new WorkMeter(limit, now + Math.max(0, deadlineNanos - now) / 4 * 3, cancel);
    }

    /** Takes over what a part has used. */
    public void absorb(WorkMeter part) {
        used += part.used;
        cutShort |= part.cutShort;
    }

    /** Steps that are left, {@link Long#MAX_VALUE} or nearly so where only the clock limits. */
    public long left() {
        return Math.max(0, limit - used);
    }

    public long used() {
        return used;
    }

    /** True if the clock or a cancel ended the task, not the work limit. */
    public boolean isCutShort() {
        return cutShort;
    }
}
