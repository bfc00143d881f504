package org.stockcutting.check;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Bounded knapsack over reachable points only: for every length that pieces can make, the most they are worth, dominated points left
 * out (Nemhauser, Ullmann 1969). Where the points explode, lengths are rounded down to a grid, which can only raise the worth and so
 * keeps the bound valid.
 *
 * @param lengths ascending
 * @param values strictly ascending
 * @param grid what a length is in nanometres
 */
record Knapsack(long[] lengths, long[] values, long grid) {

    private static final int MOST_POINTS = 500_000;
    private static final int GRID_POINTS = 200_000;

    /** So many pieces of one kind. */
    record Item(long length, long value, long copies) {}

    static Knapsack solve(List<Item> items, long capacity) {
        Knapsack exact = tryGrid(items, capacity, 1);
        if (exact != null) {
            return exact;
        }
        Knapsack coarse = tryGrid(items, capacity, capacity / GRID_POINTS + 1);
        if (coarse == null) {
            throw new IllegalStateException("a grid of " + GRID_POINTS + " points cannot hold more");
        }
        return coarse;
    }

    static @Nullable Knapsack tryGrid(List<Item> items, long capacity, long grid) {
        long[] lengths = {0};
        long[] values = {0};
        for (Item item : items) {
            long length = item.length() / grid;
            long most = capacity / grid;
            long copies = length == 0 ? item.copies() : Math.min(item.copies(), most / length);
            for (long chunk = 1; copies > 0; chunk *= 2) {
                long take = Math.min(chunk, copies);
                copies -= take;
                long[][] merged = merge(lengths, values, length * take, Math.multiplyExact(item.value(), take), most);
                lengths = merged[0];
                values = merged[1];
                if (lengths.length > MOST_POINTS) {
                    return null;
                }
            }
        }
        return new Knapsack(lengths, values, grid);
    }

    /** Points as they are, together with the same points shifted by one bundle. */
    private static long[][] merge(long[] lengths, long[] values, long length, long value, long most) {
        int n = lengths.length;
        long[] outLengths = new long[2 * n];
        long[] outValues = new long[2 * n];
        int count = 0;
        int stay = 0;
        int shift = 0;
        long best = -1;
        while (stay < n || (shift < n && lengths[shift] + length <= most)) {
            boolean canShift = shift < n && lengths[shift] + length <= most;
            boolean first = stay < n && (!canShift || lengths[stay] <= lengths[shift] + length);
            long at = first ? lengths[stay] : lengths[shift] + length;
            long worth = first ? values[stay++] : values[shift++] + value;
            if (worth > best) {
                if (count > 0 && outLengths[count - 1] == at) {
                    count--;
                }
                outLengths[count] = at;
                outValues[count++] = worth;
                best = worth;
            }
        }
        return new long[][] {Arrays.copyOf(outLengths, count), Arrays.copyOf(outValues, count)};
    }

    long best() {
        return values[values.length - 1];
    }

    /** Length of a point in nanometres, never more than the true one. */
    long length(int point) {
        return lengths[point] * grid;
    }
}
