package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * Prices a board with zones by a dynamic programme over the position of the saw: best value with everything in front of x cut. Pieces
 * start where one before ends or where a zone ends (normal positions: Herz 1972; Christofides, Whitlock 1977), neighbours stand a kerf
 * apart by position.
 *
 * <p>With caps each position remembers one label and no more copies are put into it than allowed, which makes usable patterns but may
 * miss the best; without caps the value is an upper limit for every pattern.
 */
final class PositionKnapsack {

    /** Longest line, in units, that is worth an array. */
    static final long LONGEST = 200_000;

    private final LineModel model;
    private double[] best = new double[0];
    private int[] from = new int[0];
    private int[] unit = new int[0];
    private int[] start = new int[0];
    private int end;
    private double most;
    private long operations;

    PositionKnapsack(LineModel model) {
        this.model = model;
    }

    /** Fills the table for one line and finds the best end. */
    void fill(Line line, double[] worth, int[] caps, boolean capped, double scale) {
        int capacity = (int) line.capacity;
        if (best.length <= capacity) {
            best = new double[capacity + 1];
            from = new int[capacity + 1];
            unit = new int[capacity + 1];
            start = new int[capacity + 1];
        }
        Arrays.fill(best, 0, capacity + 1, -1);
        best[0] = 0;
        unit[0] = -1;
        int[] candidates = candidates(line, worth, caps);
        long[] ends = line.zoneEnds();
        int zone = 0;
        int at = 0;
        end = 0;
        most = 0;
        for (int x = 0; x <= capacity; x++) {
            boolean event = x == 0;
            if (best[x] > best[at]) {
                at = x;
                event = true;
                double total = best[x] + line.gain(x) / scale;
                if (end == 0 || total > most) {
                    end = x;
                    most = total;
                }
            }
            if (zone < ends.length && ends[zone] == x) {
                zone++;
                event = true;
            }
            if (event) {
                extend(line, at, x, candidates, worth, caps, capped);
            }
        }
        operations += capacity;
    }

    private int[] candidates(Line line, double[] worth, int[] caps) {
        int[] found = new int[worth.length];
        int count = 0;
        for (int u = 0; u < worth.length; u++) {
            if (model.takes[line.index][u] && worth[u] > 1e-12 && caps[u] > 0) {
                found[count++] = u;
            }
        }
        return Arrays.copyOf(found, count);
    }

    private void extend(Line line, int at, int x, int[] candidates, double[] worth, int[] caps, boolean capped) {
        for (int u : candidates) {
            long next = x + model.units.get(u).size();
            if (next <= line.capacity && best[at] + worth[u] > best[(int) next] + 1e-12 && fits(line, u, at, x)) {
                if (!capped || copies(at, u) < caps[u]) {
                    best[(int) next] = best[at] + worth[u];
                    from[(int) next] = at;
                    unit[(int) next] = u;
                    start[(int) next] = x;
                }
            }
        }
        operations += 9L * candidates.length;
    }

    private boolean fits(Line line, int u, long free, long x) {
        long at = x;
        long from = free;
        for (int item : model.units.get(u).items()) {
            if (!line.mayStart(item, from, at)) {
                return false;
            }
            at += model.instance.items().get(item).length() + model.kerf;
            from = at;
        }
        return true;
    }

    private int copies(int at, int u) {
        int copies = 0;
        for (int x = at; unit[x] >= 0; x = from[x]) {
            copies += unit[x] == u ? 1 : 0;
        }
        return copies;
    }

    /** Worth of the best pattern plus its leftover's gain; 0 if nothing is placed. */
    double most() {
        return end == 0 ? 0 : most;
    }

    boolean isEmpty() {
        return end == 0;
    }

    Pattern pattern(Line line) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        List<int[]> reversed = new ArrayList<>();
        for (int x = end; unit[x] >= 0; x = from[x]) {
            counts.merge(unit[x], 1, Integer::sum);
            reversed.add(new int[] {unit[x], start[x]});
        }
        List<Integer> items = new ArrayList<>();
        List<Long> starts = new ArrayList<>();
        for (int i = reversed.size() - 1; i >= 0; i--) {
            long at = reversed.get(i)[1];
            for (int item : model.units.get(reversed.get(i)[0]).items()) {
                items.add(item);
                starts.add(at);
                at += model.instance.items().get(item).length() + model.kerf;
            }
        }
        return model.spotted(
                line,
                counts,
                items.stream().mapToInt(i -> i).toArray(),
                starts.stream().mapToLong(s -> s).toArray());
    }

    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
