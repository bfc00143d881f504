package org.stockcutting.solve.guillotine;

import java.util.Arrays;

/** Worths of rests by their place: open addressing, since nearly all the time of a search on boards with zones is spent in asking. */
final class RestMemory {

    private static final int FIRST = 1 << 8;
    /** Places for rests; where three quarters are taken, the memory starts anew. */
    private static final int MOST = 1 << 17;

    private static final double NONE = -1;

    private long[] keys = new long[FIRST];
    private double[] values = new double[FIRST];
    private int size;

    RestMemory() {
        Arrays.fill(values, NONE);
    }

    /** What was put here, negative if nothing was. */
    double get(long key) {
        return values[place(keys, values, key)];
    }

    /** @param value at least 0 */
    void put(long key, double value) {
        if (4 * (size + 1) > 3 * keys.length) {
            grow();
        }
        int at = place(keys, values, key);
        size += values[at] < 0 ? 1 : 0;
        keys[at] = key;
        values[at] = value;
    }

    private void grow() {
        boolean full = keys.length == MOST;
        long[] moreKeys = new long[full ? FIRST : 2 * keys.length];
        double[] moreValues = new double[moreKeys.length];
        Arrays.fill(moreValues, NONE);
        for (int i = 0; i < keys.length && !full; i++) {
            if (values[i] >= 0) {
                int at = place(moreKeys, moreValues, keys[i]);
                moreKeys[at] = keys[i];
                moreValues[at] = values[i];
            }
        }
        size = full ? 0 : size;
        keys = moreKeys;
        values = moreValues;
    }

    private static int place(long[] keys, double[] values, long key) {
        int mask = keys.length - 1;
        // Fibonacci hashing: Knuth, The Art of Computer Programming, volume 3, section 6.4.
        int at = (int) (key * 0x9e3779b97f4a7c15L >>> 32) & mask;
        while (values[at] >= 0 && keys[at] != key) {
            at = (at + 1) & mask;
        }
        return at;
    }
}
