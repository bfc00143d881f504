package org.stockcutting.solve.columns;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * How one board is cut, as counts of units.
 *
 * @param line index of the line (stock type)
 * @param units distinct units, ascending
 * @param counts how many of each, at least 1
 * @param cost what the board costs less what its kept offcut earns
 * @param spots where the pieces lie; null where they simply follow each other
 */
record Pattern(
        int line,
        int[] units,
        int[] counts,
        long cost,
        @Nullable Spots spots) {

    /** Pieces of a board with zones: item types and starts, ascending by start. */
    record Spots(int[] items, long[] starts) {}

    int countOf(int unit) {
        int place = Arrays.binarySearch(units, unit);
        return place < 0 ? 0 : counts[place];
    }

    /** How often the pattern can be cut before it makes more than is left. */
    int times(int[] left) {
        int times = Integer.MAX_VALUE;
        for (int i = 0; i < units.length; i++) {
            times = Math.min(times, left[units[i]] / counts[i]);
        }
        return times;
    }

    /** Equal keys, equal counts on the same line. */
    String key() {
        StringBuilder text = new StringBuilder().append(line);
        for (int i = 0; i < units.length; i++) {
            text.append(' ').append(units[i]).append('x').append(counts[i]);
        }
        return text.toString();
    }
}
