package org.stockcutting.solve.instance;

import org.stockcutting.plan.CancelToken;

/**
 * Counts the work of one task in weighted steps and says when to stop. One step is about one microsecond of one core of 2026; all
 * weights stand in {@link Weights}. The clock and the cancel token are only guards: they make the answer not reproducible.
 */
public final class WorkMeter {

    private static final long NANOS_PER_STEP = 1_000;

    private final long limit;
    private final long deadlineNanos;
    private final CancelToken cancel;
    private long used;
    /** Steps of searches beside this one, which its limit does not count. */
    private long beside;

    private boolean cutShort;
    private boolean partCutShort;

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

    /**
     * A part like {@link #part}; where only the clock limits, it ends after so many microseconds, however many steps they are on this
     * machine.
     */
    public WorkMeter head(long steps) {
        if (!isClockOnly()) {
            return part(steps);
        }
        long share = Math.max(0, Math.min(steps, left()));
        return new WorkMeter(limit, System.nanoTime() + share * NANOS_PER_STEP, cancel);
    }

    /**
     * A meter for another search of the same task, whose steps this one's limit does not count; where only the clock limits, a part like
     * {@link #head}. Give its use back with {@link #absorbBeside}.
     */
    public WorkMeter beside(long steps) {
        return isClockOnly() ? head(steps) : new WorkMeter(steps, deadlineNanos, cancel);
    }

    /** Takes over what a search beside this one has used. */
    public void absorbBeside(WorkMeter other) {
        beside += other.used();
        note(other);
    }

    /** Takes over what a part has used. A part may have had less time than there is, so its end is not the end of the task. */
    public void absorb(WorkMeter part) {
        used += part.used;
        beside += part.beside;
        note(part);
    }

    private void note(WorkMeter other) {
        if (other.wasCutShort()) {
            partCutShort = true;
            spend(0);
        }
    }

    /** Steps that are left; where only the clock limits, about as many as it allows. */
    public long left() {
        if (isClockOnly()) {
            return Math.max(0, (deadlineNanos - System.nanoTime()) / NANOS_PER_STEP);
        }
        return Math.max(0, limit - used);
    }

    /** True if no number of steps ends the task. */
    public boolean isClockOnly() {
        return limit == Long.MAX_VALUE;
    }

    /** All steps so far, those of searches beside this one too. */
    public long used() {
        return used + beside;
    }

    /** True if the clock or a cancel ended the task, not the work limit. */
    public boolean isCutShort() {
        return cutShort;
    }

    /** True if the clock or a cancel ended the task or a part of it, so that the answer may be another one next time. */
    public boolean wasCutShort() {
        return cutShort || partCutShort;
    }
}
