package org.stockcutting.solve.guillotine;

import java.util.TreeMap;

/** The corner points of a set of rectangles: tells whether any of them fits into another rectangle, as all of them lie. Mutable. */
final class Staircase {

    /** Least width of what is at most so long, by length; falls with length. */
    private final TreeMap<Long, Long> widths = new TreeMap<>();

    private long[] lengths = {};
    private long[] least = {};

    void add(long length, long width) {
        if (holds(length, width)) {
            return;
        }
        widths.put(length, width);
        widths.tailMap(length, false).values().removeIf(other -> other >= width);
        lengths = widths.keySet().stream().mapToLong(Long::longValue).toArray();
        least = widths.values().stream().mapToLong(Long::longValue).toArray();
    }

    /** True if some rectangle is neither longer nor wider than this. */
    boolean holds(long length, long width) {
        int last = lengths.length - 1;
        while (last >= 0 && lengths[last] > length) {
            last--;
        }
        return last >= 0 && least[last] <= width;
    }
}
