package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** First-fit decreasing, the next board being the one whose price per filled length is least; the start and the last resort. */
final class Greedy {

    /** With more limited boards than this, each is looked at once only. */
    private static final int MANY = 200;

    private final LineModel model;
    private final Work work;
    private final int[] order;

    Greedy(LineModel model, Work work) {
        this.model = model;
        this.work = work;
        this.order = IntStream.range(0, model.units.size())
                .boxed()
                .sorted(Comparator.<Integer>comparingLong(
                                u -> -model.units.get(u).size())
                        .thenComparingInt(u -> u))
                .mapToInt(u -> u)
                .toArray();
    }

    /** Goes on until nothing more fits on any board that is left. */
    void complete(Packing packing) {
        List<Line> lines = new ArrayList<>(model.lines);
        if (lines.size() > MANY) {
            lines.sort(Comparator.comparingLong(l -> l.stock.cost()));
            for (Line line : lines) {
                if (!line.isUnlimited()) {
                    fillAll(packing, line);
                }
            }
            lines.removeIf(l -> !l.isUnlimited());
        }
        while (!packing.isComplete() && !work.isCutShort()) {
            Pattern best = best(packing, lines);
            if (best == null) {
                return;
            }
            packing.use(best, Math.max(1, Math.min(packing.boards[best.line()], best.times(packing.left))));
        }
    }

    private void fillAll(Packing packing, Line line) {
        while (packing.boards[line.index] > 0 && !packing.isComplete() && !work.isCutShort()) {
            Pattern pattern = fill(line, packing.left);
            if (pattern.units().length == 0) {
                return;
            }
            packing.use(pattern, 1);
        }
    }

    private @Nullable Pattern best(Packing packing, List<Line> lines) {
        Pattern best = null;
        double least = Double.POSITIVE_INFINITY;
        for (Line line : lines) {
            if (packing.boards[line.index] > 0) {
                Pattern pattern = fill(line, packing.left);
                if (pattern.units().length > 0) {
                    // A free board should be well filled all the same.
                    double filled = model.size(pattern);
                    double rate = pattern.cost() / filled + 1e-9 * line.capacity / filled;
                    if (rate < least) {
                        best = pattern;
                        least = rate;
                    }
                }
            }
        }
        return best;
    }

    private Pattern fill(Line line, int[] left) {
        work.spend(4L * order.length);
        return line.hasZones ? fillAround(line, left) : fillInRow(line, left);
    }

    private Pattern fillInRow(Line line, int[] left) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        long room = line.capacity;
        for (int u : order) {
            Unit unit = model.units.get(u);
            if (left[u] > 0 && unit.size() <= room && model.takes[line.index][u]) {
                long most = unit.size() == 0 ? unit.cap() : room / unit.size();
                int count = (int) Math.min(most, Math.min(left[u], unit.cap()));
                counts.put(u, count);
                room -= count * unit.size();
            }
        }
        return model.follow(line, counts);
    }

    private Pattern fillAround(Line line, int[] left) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        List<Integer> items = new ArrayList<>();
        List<Long> starts = new ArrayList<>();
        long at = 0;
        for (int u = next(line, at, left, counts); u >= 0; u = next(line, at, left, counts)) {
            at = place(line, u, at, items, starts);
            counts.merge(u, 1, Integer::sum);
        }
        return model.spotted(
                line,
                counts,
                items.stream().mapToInt(i -> i).toArray(),
                starts.stream().mapToLong(s -> s).toArray());
    }

    /** The unit that can start soonest, the longest of these; -1 if none fits. */
    private int next(Line line, long from, int[] left, TreeMap<Integer, Integer> counts) {
        int best = -1;
        long soonest = Long.MAX_VALUE;
        for (int u : order) {
            int used = counts.getOrDefault(u, 0);
            if (left[u] > used && model.units.get(u).cap() > used && model.takes[line.index][u]) {
                long start = line.earliest(model.units.get(u).items()[0], from);
                if (start >= 0 && start < soonest && place(line, u, from, new ArrayList<>(), new ArrayList<>()) >= 0) {
                    best = u;
                    soonest = start;
                }
            }
        }
        work.spend(8L * order.length);
        return best;
    }

    private long place(Line line, int u, long from, List<Integer> items, List<Long> starts) {
        long at = from;
        List<Long> places = new ArrayList<>();
        for (int item : model.units.get(u).items()) {
            long x = line.earliest(item, at);
            if (x < 0) {
                return -1;
            }
            places.add(x);
            at = x + model.instance.items().get(item).length() + model.kerf;
        }
        for (int i = 0; i < places.size(); i++) {
            items.add(model.units.get(u).items()[i]);
            starts.add(places.get(i));
        }
        return at;
    }
}
