package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/**
 * The bounded knapsack for all capacities at once: a list of undominated pairs (size, value), ascending in both. Copies are added in
 * powers of two, states that cannot lead to an improving pattern on any line are dropped. Needs no array over the length, so it does not
 * mind how fine the units are.
 *
 * <p>S. Martello, P. Toth, Knapsack Problems, 1990, section 2.6 (dominance), section 3.2 (bounded to 0-1).
 */
final class ParetoKnapsack implements RowKnapsack {

    private static final double EPS = 1e-12;

    private final LineModel model;
    private final Work work;
    private long[] size = new long[1024];
    private double[] value = new double[1024];
    private int[] previous = new int[1024];
    private int[] unit = new int[1024];
    private int[] count = new int[1024];
    private int nodes;
    private int[] states = new int[0];

    ParetoKnapsack(LineModel model, Work work) {
        this.model = model;
        this.work = work;
    }

    @Override
    public void fill(List<Integer> allowed, double[] worth, int[] caps, List<Line> lines, double[] charges) {
        List<Integer> order = new ArrayList<>();
        for (int u : allowed) {
            if (worth[u] > EPS && caps[u] > 0) {
                order.add(u);
            }
        }
        order.sort(Comparator.<Integer>comparingDouble(
                        u -> -worth[u] / Math.max(1, model.units.get(u).size()))
                .thenComparingInt(u -> u));
        long capacity = lines.stream().mapToLong(l -> l.capacity).max().orElse(0);
        nodes = 0;
        states = new int[] {node(0, 0, -1, -1, 0)};
        for (int u : order) {
            if (work.isCutShort()) {
                return;
            }
            long step = model.units.get(u).size();
            double density = worth[u] / Math.max(1, step);
            drop(density, lines, charges);
            int copies = (int) Math.min(caps[u], step == 0 ? caps[u] : capacity / step);
            for (int chunk = 1; copies > 0; chunk *= 2) {
                int used = Math.min(chunk, copies);
                states = merge(u, used, used * step, used * worth[u], capacity);
                copies -= used;
            }
        }
    }

    /** Drops states from which even a perfect fill at the best density left does not reach any line's charge. */
    private void drop(double density, List<Line> lines, double[] charges) {
        double most = Double.NEGATIVE_INFINITY;
        for (int l = 0; l < charges.length; l++) {
            most = Math.max(most, lines.get(l).capacity * density - charges[l]);
        }
        int kept = 0;
        for (int state : states) {
            if (value[state] - size[state] * density + most > 1e-10) {
                states[kept++] = state;
            }
        }
        work.spend(states.length + charges.length);
        states = Arrays.copyOf(states, kept);
    }

    private int[] merge(int u, int copies, long step, double gain, long capacity) {
        int[] merged = new int[2 * states.length];
        int length = 0;
        int a = 0;
        int b = 0;
        double last = Double.NEGATIVE_INFINITY;
        while (a < states.length || b < states.length) {
            boolean old = a < states.length
                    && (b >= states.length
                            || size[states[a]] < size[states[b]] + step
                            || (size[states[a]] == size[states[b]] + step
                                    && value[states[a]] >= value[states[b]] + gain));
            int from = old ? states[a++] : states[b++];
            double worth = old ? value[from] : value[from] + gain;
            if (!old && size[from] + step > capacity) {
                b = states.length;
            } else if (worth > last + EPS) {
                last = worth;
                merged[length++] = old ? from : node(size[from] + step, worth, from, u, copies);
            }
        }
        work.spend(2L * states.length);
        return Arrays.copyOf(merged, length);
    }

    private int node(long newSize, double newValue, int from, int newUnit, int newCount) {
        if (nodes == size.length) {
            size = Arrays.copyOf(size, 2 * nodes);
            value = Arrays.copyOf(value, 2 * nodes);
            previous = Arrays.copyOf(previous, 2 * nodes);
            unit = Arrays.copyOf(unit, 2 * nodes);
            count = Arrays.copyOf(count, 2 * nodes);
        }
        size[nodes] = newSize;
        value[nodes] = newValue;
        previous[nodes] = from;
        unit[nodes] = newUnit;
        count[nodes] = newCount;
        return nodes++;
    }

    @Override
    public int best(Line line, double scale) {
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        boolean gains = line.stock.offcutValue() != 0;
        for (int i = states.length - 1; i >= 0; i--) {
            int state = states[i];
            if (size[state] <= line.capacity && size[state] > 0) {
                double worth = value[state] + (gains ? line.gain(size[state]) / scale : 0);
                if (worth > most) {
                    best = state;
                    most = worth;
                }
                if (!gains) {
                    break;
                }
            }
        }
        work.spend(16);
        return best;
    }

    @Override
    public double value(int state) {
        return value[state];
    }

    @Override
    public long size(int state) {
        return size[state];
    }

    @Override
    public TreeMap<Integer, Integer> counts(int state) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        for (int s = state; previous[s] >= 0; s = previous[s]) {
            counts.merge(unit[s], count[s], Integer::sum);
        }
        return counts;
    }
}
