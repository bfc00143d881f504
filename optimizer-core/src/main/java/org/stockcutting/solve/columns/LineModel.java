package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;

/** An instance as units and lines. */
final class LineModel {

    final Instance instance;
    final long kerf;
    final List<Unit> units = new ArrayList<>();
    final List<Line> lines = new ArrayList<>();
    /** For each line, for each unit: may it lie there at all. */
    final boolean[][] takes;

    LineModel(Instance instance) {
        this.instance = instance;
        this.kerf = instance.crosscutKerf();
        boolean[] grouped = new boolean[instance.items().size()];
        for (Instance.Group group : instance.groups()) {
            group.items().forEach(i -> grouped[i] = true);
            units.add(set(group));
        }
        for (int i = 0; i < grouped.length; i++) {
            if (!grouped[i]) {
                ItemType item = instance.items().get(i);
                units.add(new Unit(
                        new int[] {i},
                        item.length() + kerf,
                        item.weight(),
                        item.demand(),
                        Math.min(item.demand(), item.perBoard())));
            }
        }
        for (int s = 0; s < instance.stocks().size(); s++) {
            lines.add(new Line(instance, s));
        }
        takes = eligibility();
    }

    private LineModel(LineModel other, int[] demands) {
        this.instance = other.instance;
        this.kerf = other.kerf;
        this.lines.addAll(other.lines);
        for (int u = 0; u < demands.length; u++) {
            Unit unit = other.units.get(u);
            units.add(new Unit(unit.items(), unit.size(), unit.weight(), demands[u], unit.perBoard()));
        }
        takes = eligibility();
    }

    /** The same with other demands, which may be 0. */
    LineModel withDemands(int[] demands) {
        return new LineModel(this, demands);
    }

    private boolean[][] eligibility() {
        boolean[][] takes = new boolean[lines.size()][units.size()];
        for (int s = 0; s < takes.length; s++) {
            for (int u = 0; u < units.size(); u++) {
                takes[s][u] = takes(lines.get(s), units.get(u));
            }
        }
        return takes;
    }

    /** Demands of the units that some line takes; 0 for the others. */
    int[] placeable() {
        int[] demands = demands();
        for (int u = 0; u < demands.length; u++) {
            int unit = u;
            if (lines.stream().noneMatch(l -> l.copies(1) > 0 && takes[l.index][unit])) {
                demands[u] = 0;
            }
        }
        return demands;
    }

    private Unit set(Instance.Group group) {
        List<Integer> items = new ArrayList<>();
        long size = 0;
        long weight = 0;
        int demand = Integer.MAX_VALUE;
        int perBoard = Integer.MAX_VALUE;
        for (int g = 0; g < group.items().size(); g++) {
            int item = group.items().get(g);
            int perSet = group.perSet().get(g);
            ItemType type = instance.items().get(item);
            for (int c = 0; c < perSet; c++) {
                items.add(item);
            }
            size += perSet * (type.length() + kerf);
            weight += perSet * type.weight();
            demand = Math.min(demand, type.demand() / perSet);
            perBoard = Math.min(perBoard, type.perBoard() / perSet);
        }
        items.sort(
                Comparator.<Integer>comparingLong(i -> -instance.items().get(i).length())
                        .thenComparingInt(i -> i));
        int[] pieces = items.stream().mapToInt(i -> i).toArray();
        return new Unit(pieces, size, weight, demand, Math.min(demand, perBoard));
    }

    private static boolean takes(Line line, Unit unit) {
        if (unit.perBoard() < 1 || unit.size() > line.capacity) {
            return false;
        }
        for (int item : unit.items()) {
            if (!line.takes(item)) {
                return false;
            }
        }
        return true;
    }

    int[] demands() {
        return units.stream().mapToInt(Unit::demand).toArray();
    }

    long size(Pattern pattern) {
        long size = 0;
        for (int i = 0; i < pattern.units().length; i++) {
            size += pattern.counts()[i] * units.get(pattern.units()[i]).size();
        }
        return size;
    }

    /** Size of the longest single piece of some counted units. */
    long longestPiece(TreeMap<Integer, Integer> counts) {
        long longest = 0;
        for (int unit : counts.keySet()) {
            int item = units.get(unit).items()[0];
            longest = Math.max(longest, instance.items().get(item).length() + kerf);
        }
        return longest;
    }

    /**
     * A pattern without zones whose pieces follow each other. Where the saw needs a longer piece to hold on to than these leave, the
     * smallest units are left out until it does.
     */
    Pattern follow(Line line, TreeMap<Integer, Integer> wanted) {
        TreeMap<Integer, Integer> counts = new TreeMap<>(wanted);
        long size = 0;
        for (var entry : counts.entrySet()) {
            size += entry.getValue() * units.get(entry.getKey()).size();
        }
        while (!counts.isEmpty() && !line.isSafe(size, longestPiece(counts))) {
            int least = counts.keySet().stream()
                    .min(Comparator.comparingLong(u -> units.get(u).size()))
                    .orElseThrow();
            size -= units.get(least).size();
            counts.merge(least, -1, (a, b) -> a + b == 0 ? null : a + b);
        }
        return new Pattern(line.index, keys(counts), values(counts), line.cost(size), null);
    }

    static int[] keys(TreeMap<Integer, Integer> counts) {
        return counts.keySet().stream().mapToInt(i -> i).toArray();
    }

    static int[] values(TreeMap<Integer, Integer> counts) {
        return counts.values().stream().mapToInt(i -> i).toArray();
    }

    /** The pattern with no more of any unit than is left. Groups stay whole; the rest stays where it is. */
    Pattern trimmed(Pattern pattern, int[] left) {
        TreeMap<Integer, Integer> counts = new TreeMap<>();
        boolean same = true;
        for (int i = 0; i < pattern.units().length; i++) {
            int unit = pattern.units()[i];
            int count = Math.min(pattern.counts()[i], left[unit]);
            same &= count == pattern.counts()[i];
            if (count > 0) {
                counts.put(unit, count);
            }
        }
        if (same) {
            return pattern;
        }
        Line line = lines.get(pattern.line());
        return pattern.spots() == null ? follow(line, counts) : keep(line, pattern.spots(), counts);
    }

    private Pattern keep(Line line, Pattern.Spots spots, TreeMap<Integer, Integer> counts) {
        int[] quota = new int[instance.items().size()];
        counts.forEach((u, c) -> {
            for (int item : units.get(u).items()) {
                quota[item] += c;
            }
        });
        int[] kept = IntStream.range(0, spots.items().length)
                .filter(p -> quota[spots.items()[p]]-- > 0)
                .toArray();
        int[] items = IntStream.of(kept).map(p -> spots.items()[p]).toArray();
        long[] starts = IntStream.of(kept).mapToLong(p -> spots.starts()[p]).toArray();
        return spotted(line, counts, items, starts);
    }

    /** A pattern whose pieces stand at given places. */
    Pattern spotted(Line line, TreeMap<Integer, Integer> counts, int[] items, long[] starts) {
        int last = items.length - 1;
        long next =
                last < 0 ? 0 : starts[last] + instance.items().get(items[last]).length() + kerf;
        return new Pattern(line.index, keys(counts), values(counts), line.cost(next), new Pattern.Spots(items, starts));
    }
}
