package org.stockcutting.wood;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Orders in which pieces are placed. */
final class Orders {

    private Orders() {}

    /** Longest first. */
    static int[] byLength(List<Slice> slices) {
        return sorted(slices, Comparator.comparingLong((Slice slice) -> -slice.length()));
    }

    /** Clearest wood first, then longest first. */
    static int[] byClass(List<Slice> slices) {
        return sorted(slices, Comparator.comparing(Slice::woodClass).thenComparingLong(slice -> -slice.length()));
    }

    private static int[] sorted(List<Slice> slices, Comparator<Slice> comparator) {
        return IntStream.range(0, slices.size())
                .boxed()
                .sorted((a, b) -> comparator.compare(slices.get(a), slices.get(b)))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** The order with a few neighbours exchanged. */
    static int[] disturbed(int[] order, Noise noise) {
        int[] other = order.clone();
        for (int i = 0; i + 1 < other.length; i++) {
            int j = Math.min(other.length - 1, i + noise.below(3));
            int kept = other[i];
            other[i] = other[j];
            other[j] = kept;
        }
        return other;
    }
}
