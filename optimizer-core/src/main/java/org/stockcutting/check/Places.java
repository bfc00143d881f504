package org.stockcutting.check;

import java.util.Arrays;
import java.util.BitSet;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;

/**
 * Places along one axis between which {@link ZoneTable} looks at rectangles, kerfs folded in. Cuts are worth making at sums of pieces only,
 * counted from the start or from behind a zone (Herz 1972): a pattern can be pushed towards the start until nothing moves. Where there are
 * too many such sums, some stand for all: a cell between two places is open if a sum lies inside it.
 *
 * @param at ascending, from 0 to the size
 * @param open for each cell whether a cut inside it may be worth making
 */
record Places(long[] at, boolean[] open) {

    private static final int MOST_UNITS = 1 << 20;

    int count() {
        return at.length;
    }

    boolean isExact() {
        for (boolean cell : open) {
            if (cell) {
                return false;
            }
        }
        return true;
    }

    /** The greatest place at which a rectangle of these places may really start. */
    long latestStart(int place) {
        return open[place] ? at[place + 1] - 1 : at[place];
    }

    /** The least place at which a rectangle of these places may really end. */
    long earliestEnd(int place) {
        return open[place - 1] ? at[place - 1] + 1 : at[place];
    }

    /**
     * Sums of sizes up to an end, from the start and from each of some other places; null where they have no unit that is large enough.
     *
     * @param starts places from 0 to the end
     */
    static long @Nullable [] sums(long end, long[] sizes, long[] starts) {
        long unit =
                LongStream.concat(Arrays.stream(sizes), Arrays.stream(starts)).reduce(0, Places::gcd);
        if (unit == 0 || end / unit > MOST_UNITS) {
            return null;
        }
        int most = (int) (end / unit);
        BitSet reached = new BitSet(most + 1);
        reached.set(0);
        for (long start : starts) {
            reached.set((int) (start / unit));
        }
        for (int at = 0; at >= 0; at = reached.nextSetBit(at + 1)) {
            for (long size : sizes) {
                if (size / unit <= most - at) {
                    reached.set(at + (int) (size / unit));
                }
            }
        }
        return reached.stream().mapToLong(at -> at * unit).toArray();
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /**
     * Places at most so far apart, unless no sum lies between.
     *
     * @param sums where cuts are worth making; null where that is anywhere
     * @param kept places that must be among them
     */
    static Places of(long size, long @Nullable [] sums, long[] kept, long cell) {
        TreeSet<Long> stops = new TreeSet<>();
        Arrays.stream(kept).filter(place -> place > 0 && place < size).forEach(stops::add);
        stops.add(size);
        TreeSet<Long> places = new TreeSet<>(stops);
        places.add(0L);
        long last = 0;
        for (long stop : stops) {
            while (stop - last > cell) {
                long next = sums == null ? last + cell : next(sums, last, cell);
                if (next >= stop) {
                    break;
                }
                places.add(next);
                last = next;
            }
            last = stop;
        }
        long[] at = places.stream().mapToLong(Long::longValue).toArray();
        boolean[] open = new boolean[at.length - 1];
        for (int i = 0; i < open.length; i++) {
            open[i] = sums == null ? at[i + 1] - at[i] > 1 : next(sums, at[i], 0) < at[i + 1];
        }
        return new Places(at, open);
    }

    /** The last sum within a cell behind a place; the first one behind it where there is none. */
    private static long next(long[] sums, long place, long cell) {
        int behind = index(sums, place);
        if (behind == sums.length) {
            return Long.MAX_VALUE;
        }
        int beyond = index(sums, place + cell);
        return sums[Math.max(behind, beyond - 1)];
    }

    /** Index of the first sum behind a place. */
    private static int index(long[] sums, long place) {
        int found = Arrays.binarySearch(sums, place);
        return found >= 0 ? found + 1 : -found - 1;
    }
}
