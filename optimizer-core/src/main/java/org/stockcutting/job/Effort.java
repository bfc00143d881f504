package org.stockcutting.job;

import org.jspecify.annotations.Nullable;

/**
 * How hard to search.
 *
 * @param work limit in weighted steps, or null: with {@code seconds} null too the default of about 3 s of one core applies, else the
 *     clock alone limits. A rack of boards with bad zones that may be cut either way first is searched three times, each time within it
 * @param seconds wall clock guard, or null for the default guard of 20 s
 * @param seed seed of every random choice
 * @param threads how many threads may be used; never changes the answer
 */
public record Effort(@Nullable Long work, @Nullable Integer seconds, long seed, int threads) {

    /** Weighted steps that take about 3 s on one core of 2026. */
    public static final long DEFAULT_WORK = 3_000_000L;
    /** Guard in seconds where nothing is asked for. */
    public static final int DEFAULT_SECONDS = 20;

    public static Effort defaults() {
        return new Effort(null, null, 1, 1);
    }
}
