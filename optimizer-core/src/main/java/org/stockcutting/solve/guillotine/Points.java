package org.stockcutting.solve.guillotine;

import java.util.BitSet;

/**
 * Where a cut across one axis is worth making: the sums of piece sizes (Herz, IBM Journal of Research and Development 16, 1972). Sums so
 * close to the board's end that no piece fits behind them count as the end itself.
 */
final class Points {

    /** Longer axes are left to coarser bounds. */
    static final long LONGEST = 1 << 20;

    /** Ascending, from 0 to the board's size. */
    final int[] at;

    private final int[] floor;
    private final int[] ceiling;

    /** @param sizes piece sizes along the axis, all at least 1; those above the board's size are left out */
    Points(int size, int[] sizes) {
        this(size, sizes, true);
    }

    /** @param merged false to keep the sums that are close to the board's end apart from it */
    Points(int size, int[] sizes, boolean merged) {
        BitSet reached = new BitSet(size + 1);
        reached.set(0);
        int least = size;
        for (int step : sizes) {
            least = Math.min(least, step);
            for (int p = reached.nextSetBit(0); p >= 0 && p + step <= size; p = reached.nextSetBit(p + 1)) {
                reached.set(p + step);
            }
        }
        if (merged) {
            reached.clear(size - least + 1, size + 1);
        }
        reached.set(size);
        at = reached.stream().toArray();
        floor = new int[size + 1];
        ceiling = new int[size + 1];
        for (int x = 0, k = 0; x <= size; x++) {
            ceiling[x] = at[k] >= x ? k : k + 1;
            k = ceiling[x];
            floor[x] = at[k] == x ? k : k - 1;
        }
    }

    int count() {
        return at.length;
    }

    int size() {
        return at[at.length - 1];
    }

    /** Index of the last point at or before a place on the axis. */
    int before(int x) {
        return floor[x];
    }

    /** Index of the first point at or behind a place on the axis. */
    int behind(int x) {
        return ceiling[x];
    }
}
