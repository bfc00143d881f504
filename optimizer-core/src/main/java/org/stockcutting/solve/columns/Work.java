package org.stockcutting.solve.columns;

import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/** Elementary operations told to the meter as steps. */
final class Work {

    /** Told at once, some 0.05 ms of work: asking the clock more often would cost more than the work. */
    private static final long BATCH = 50_000;

    private final WorkMeter meter;
    private long owed;

    Work(WorkMeter meter) {
        this.meter = meter;
    }

    /** False once the task should stop. */
    boolean spend(long operations) {
        owed += operations;
        if (owed >= BATCH) {
            meter.spend(Weights.of(owed));
            owed = 0;
        }
        return !meter.isExhausted();
    }

    /** True if the clock or a cancel ended the task; the work limit alone does not count. */
    boolean isCutShort() {
        return meter.isCutShort();
    }
}
