package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * The bounded knapsack as a table over all capacities up to the longest line's; quick where lengths are small numbers. Copies are added
 * in powers of two (Martello, Toth, Knapsack Problems, 1990, section 3.2).
 */
final class DenseKnapsack implements RowKnapsack {

    /** Entries beyond which the list of undominated states is the better choice. */
    private static final long MOST_ENTRIES = 6_000_000;

    private final LineModel model;
    private final Work work;
    private double[] best = new double[0];
    private final List<boolean[]> taken = new ArrayList<>();
    private final List<int[]> stages = new ArrayList<>();
    private int capacity;

    DenseKnapsack(LineModel model, Work work) {
        this.model = model;
        this.work = work;
    }

    static boolean suits(List<Integer> allowed, int[] caps, long capacity) {
        long entries = 0;
        for (int u : allowed) {
            entries += (32 - Integer.numberOfLeadingZeros(Math.max(1, caps[u]))) * (capacity + 1);
        }
        return capacity < 30_000 && entries <= MOST_ENTRIES;
    }

    @Override
    public void fill(List<Integer> allowed, double[] worth, int[] caps, List<Line> lines, double[] charges) {
        capacity = (int) lines.stream().mapToLong(l -> l.capacity).max().orElse(0);
        if (best.length != capacity + 1) {
            best = new double[capacity + 1];
            taken.clear();
        }
        Arrays.fill(best, 0);
        stages.clear();
        for (int u : allowed) {
            if (work.isCutShort()) {
                return;
            }
            long size = model.units.get(u).size();
            if (worth[u] > 1e-12 && caps[u] > 0 && size <= capacity) {
                int copies = (int) Math.min(caps[u], size == 0 ? caps[u] : capacity / size);
                for (int chunk = 1; copies > 0; chunk *= 2) {
                    int used = Math.min(chunk, copies);
                    stage(u, used, (int) (used * size), used * worth[u]);
                    copies -= used;
                }
            }
        }
    }

    private void stage(int u, int copies, int step, double gain) {
        int number = stages.size();
        stages.add(new int[] {u, copies, step});
        if (taken.size() == number) {
            taken.add(new boolean[capacity + 1]);
        }
        boolean[] take = taken.get(number);
        Arrays.fill(take, false);
        for (int c = capacity; c >= step; c--) {
            double with = best[c - step] + gain;
            if (with > best[c] + 1e-12) {
                best[c] = with;
                take[c] = true;
            }
        }
        work.spend(capacity);
    }

    @Override
    public int best(Line line, double scale) {
        int end = (int) line.capacity;
        if (line.stock.offcutValue() == 0) {
            return best[end] > 0 ? end : -1;
        }
        int chosen = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int c = 1; c <= end; c++) {
            double total = best[c] + line.gain(c) / scale;
            if (best[c] > best[c - 1] && total > most) {
                chosen = c;
                most = total;
            }
        }
        work.spend(end);
        return chosen;
    }

    @Override
    public double value(int state) {
        return best[state];
    }

    @Override
    public long size(int state) {
        int c = state;
        for (int s = stages.size() - 1; s >= 0; s--) {
            c -= taken.get(s)[c] ? stages.get(s)[2] : 0;
        }
        return (long) state - c;
    }

    @Override
    public TreeMap<Integer, Integer> counts(int state) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        int c = state;
        for (int s = stages.size() - 1; s >= 0; s--) {
            if (taken.get(s)[c]) {
                int[] stage = stages.get(s);
                counts.merge(stage[0], stage[1], Integer::sum);
                c -= stage[2];
            }
        }
        return counts;
    }
}
