package org.stockcutting.check;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.stream.LongStream;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/** As many places along and across as some work allows: cells are made smaller where they waste most wood, down to none at all. */
record ZoneGrid(Places along, Places across) {

    /** Operations on a cell of the table besides sums of two others. */
    private static final int PLAIN = 4;

    /** Places of one axis: all pairs of them are looked at, also where a board holds one piece and hardly any pair counts as a cell. */
    static final int MOST_PLACES = 1_000;

    /**
     * One axis of a board.
     *
     * @param size with the kerf folded in
     * @param sizes of pieces, so too
     * @param behind ends of zones, behind which pieces may start
     * @param before starts of zones, the kerf added, before which pieces may end
     */
    record Axis(long size, long[] sizes, long[] behind, long[] before) {

        long[] starts() {
            return Arrays.stream(behind).filter(place -> place < size).toArray();
        }
    }

    /** Places of one axis as they get denser. */
    private static final class Denser {
        final Axis axis;
        final long @Nullable [] sums;
        final long[] kept;
        final long least;
        long cell;
        Places places;

        Denser(Axis axis) {
            this.axis = axis;
            this.sums = Places.sums(axis.size(), axis.sizes(), axis.starts());
            this.kept = LongStream.concat(Arrays.stream(axis.behind()), Arrays.stream(axis.before()))
                    .toArray();
            this.least = Arrays.stream(axis.sizes()).min().orElse(axis.size());
            this.cell = least;
            this.places = Places.of(axis.size(), sums, kept, cell, least);
        }

        private long smaller() {
            return cell - (cell + 3) / 4;
        }

        Places next() {
            return Places.of(axis.size(), sums, kept, smaller(), least);
        }

        void take(Places denser) {
            places = denser;
            cell = smaller();
        }

        boolean isDone() {
            return places.isExact() || cell <= 1;
        }

        /** Wood of a cell. */
        BigInteger waste(Axis other) {
            return isDone() ? BigInteger.ZERO : BigInteger.valueOf(cell).multiply(BigInteger.valueOf(other.size()));
        }
    }

    /** The densest grid within so much work and so many cells; null where even the coarsest takes more. */
    static @Nullable ZoneGrid of(Axis along, Axis across, long work, long cells) {
        Denser x = new Denser(along);
        Denser y = new Denser(across);
        if (!fits(x, x.places, y, y.places, work, cells)) {
            return null;
        }
        boolean grows = true;
        while (grows) {
            boolean first = x.waste(across).compareTo(y.waste(along)) >= 0;
            grows = grow(first ? x : y, first ? y : x, first, work, cells)
                    || grow(first ? y : x, first ? x : y, !first, work, cells);
        }
        return new ZoneGrid(x.places, y.places);
    }

    private static boolean grow(Denser one, Denser other, boolean alongX, long work, long cells) {
        if (one.isDone()) {
            return false;
        }
        Places next = one.next();
        boolean fits = alongX
                ? fits(one, next, other, other.places, work, cells)
                : fits(other, other.places, one, next, work, cells);
        if (fits) {
            one.take(next);
        }
        return fits;
    }

    private static boolean fits(Denser x, Places along, Denser y, Places across, long work, long cells) {
        if (along.count() > MOST_PLACES || across.count() > MOST_PLACES) {
            return false;
        }
        BigFraction slabs = pairs(along.count(), x);
        BigFraction pairs = pairs(across.count(), y);
        BigFraction both = slabs.multiply(pairs);
        BigFraction all = triples(along.count(), x)
                .multiply(pairs)
                .add(slabs.multiply(triples(across.count(), y)))
                .add(both.multiply(PLAIN));
        return both.compareTo(new BigFraction(cells)) <= 0 && all.compareTo(new BigFraction(work)) <= 0;
    }

    /** How many pairs of so many places are so far apart that a piece lies between them, roughly. */
    private static BigFraction pairs(int places, Denser axis) {
        return free(axis, 1).multiply(places).pow(2).divide(2);
    }

    /** Of three places in a row. */
    private static BigFraction triples(int places, Denser axis) {
        return free(axis, 2).multiply(places).pow(3).divide(6);
    }

    /** Share of the size that so many pieces leave. */
    private static BigFraction free(Denser axis, int pieces) {
        long size = axis.axis.size();
        return new BigFraction(Math.max(0, size - pieces * axis.least)).divide(BigInteger.valueOf(size));
    }
}
