package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.LongUnaryOperator;

/**
 * A dual feasible function of one extent: whatever pieces lie side by side within the extent, their values together are at most
 * {@code whole}. Values and whole are integers, so that nothing is rounded.
 *
 * <p>Families: small pieces count nothing and large ones all, and pieces measured in steps of 1 / (k + 1) (Fekete, Schepers, Mathematical
 * Methods of Operations Research 60, 2004); pieces measured in steps of k from both ends (Carlier, Clautiaux, Moukrim, Computers and
 * Operations Research 34, 2007). Compositions of functions are not tried.
 *
 * @param value value of a piece of this padded extent, 0 up to the whole
 * @param whole value of the whole padded extent
 */
record Scale(LongUnaryOperator value, long whole) {

    /** Steps that are tried: finer ones come near to the extent itself. */
    private static final int MOST_STEPS = 30;

    long of(long size) {
        return value.applyAsLong(size);
    }

    /** The extent itself. */
    static Scale plain(long extent) {
        return new Scale(x -> x, extent);
    }

    /** Pieces under k count nothing, those with less than k beside them count all. */
    static Scale without(long extent, long k) {
        return new Scale(x -> x > extent - k ? extent : x < k ? 0 : x, extent);
    }

    /** How many more than x / (1 / (k + 1)) of the extent: pieces over a half of it count 1 for k = 1, over a third for k = 2. */
    static Scale steps(long extent, long k) {
        return new Scale(x -> (k + 1) * x % extent == 0 ? k * x : (k + 1) * x / extent * extent, k * extent);
    }

    /** How many times k goes into the piece, and for pieces over a half, how often it does not go into what is left. */
    static Scale multiples(long extent, long k) {
        long most = extent / k;
        return new Scale(
                x -> {
                    if (2 * x > extent) {
                        return 2 * (most - (extent - x) / k);
                    }
                    return 2 * x == extent ? most : 2 * (x / k);
                },
                2 * most);
    }

    /** All functions whose values can differ for these padded sizes. */
    static List<Scale> of(long extent, Iterable<Long> sizes) {
        SortedSet<Long> limits = new TreeSet<>();
        for (long size : sizes) {
            limits.add(size);
            limits.add(size + 1);
            limits.add(extent - size);
            limits.add(extent - size + 1);
        }
        List<Scale> scales = new ArrayList<>();
        scales.add(plain(extent));
        for (long k = 1; k <= MOST_STEPS; k++) {
            scales.add(steps(extent, k));
        }
        for (long k : limits) {
            if (k >= 1 && 2 * k <= extent) {
                scales.add(without(extent, k));
                scales.add(multiples(extent, k));
            }
        }
        return scales;
    }
}
