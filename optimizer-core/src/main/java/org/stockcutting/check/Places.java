package org.stockcutting.check;

import java.util.Arrays;
import java.util.BitSet;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;

/**
 * Places along one axis between which {@link ZoneTable} looks at rectangles, kerfs folded in. Cuts are worth making at sums of pieces only,
 * counted from the start or from behind a zone (Herz 1972): a pattern can be pushed towards the start until nothing moves. Where there are
 * too many such sums, some stand for all: a cell between two places is open if a sum lies inside it. Behind the last place from which a
 * piece still reaches, nothing is cut any more, but pieces end there.
 *
 * @param at ascending, from 0 to the size
 * @param open for each cell whether a cut inside it may be worth making
 * @param ends for each cell whether a piece may end inside it
 */
record Places(long[] at, boolean[] open, boolean[] ends) {

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
        return ends[place - 1] ? at[place - 1] + 1 : at[place];
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
     * @param sums where pieces may end; null where that is anywhere
     * @param kept places that must be among them
     * @param least the smallest piece
     */
    static Places of(long size, long @Nullable [] sums, long[] kept, long cell, long least) {
        long last = last(sums, Math.max(0, size - least));
        TreeSet<Long> stops = new TreeSet<>();
        Arrays.stream(kept).filter(place -> place > 0 && place < size).forEach(stops::add);
        stops.add(last);
        TreeSet<Long> places = new TreeSet<>(stops);
        places.add(0L);
        places.add(size);
        long at = 0;
        for (long stop : stops.headSet(last, true)) {
            fill(places, sums, at, stop, cell);
            at = stop;
        }
        return of(places, sums, last);
    }

    private static Places of(TreeSet<Long> places, long @Nullable [] sums, long last) {
        long[] at = places.stream().mapToLong(Long::longValue).toArray();
        boolean[] open = new boolean[at.length - 1];
        boolean[] ends = new boolean[at.length - 1];
        for (int i = 0; i < open.length; i++) {
            ends[i] = next(sums, at[i], 0) < at[i + 1];
            open[i] = ends[i] && at[i] < last;
        }
        return new Places(at, open, ends);
    }

    private static void fill(TreeSet<Long> places, long @Nullable [] sums, long from, long to, long cell) {
        long at = from;
        while (to - at > cell) {
            at = next(sums, at, cell);
            if (at >= to) {
                return;
            }
            places.add(at);
        }
    }

    /** The last sum within a cell behind a place; the first one behind it where there is none. */
    private static long next(long @Nullable [] sums, long place, long cell) {
        if (sums == null) {
            return place + Math.max(1, cell);
        }
        int behind = index(sums, place);
        if (behind == sums.length) {
            return Long.MAX_VALUE;
        }
        int beyond = index(sums, place + cell);
        return sums[Math.max(behind, beyond - 1)];
    }

    /** The last sum at or before a place. */
    private static long last(long @Nullable [] sums, long place) {
        return sums == null ? place : sums[index(sums, place) - 1];
    }

    /** Index of the first sum behind a place. */
    private static int index(long[] sums, long place) {
        int found = Arrays.binarySearch(sums, place);
        return found >= 0 ? found + 1 : -found - 1;
    }
}
