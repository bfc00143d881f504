package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Every pattern of one board, found piece by piece: for each combination of counts the least position at which it can be done with, over
 * all orders. A smaller position can do whatever a larger one can, so one label a combination is enough.
 */
final class BoardEnumeration {

    private final LineModel model;
    private final Line line;
    private final boolean byPosition;
    private final int[] caps;
    private final List<int[]> vectors = new ArrayList<>();
    private final List<long[]> labels = new ArrayList<>();
    private final Map<Key, Integer> numbers = new LinkedHashMap<>();

    private record Key(int[] vector) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Key key && Arrays.equals(vector, key.vector);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(vector);
        }
    }

    private BoardEnumeration(LineModel model, Line line, int[] left) {
        this.model = model;
        this.line = line;
        this.byPosition = line.hasZones || model.instance.limits().minimumPiece() > 0;
        this.caps = new int[byPosition ? model.instance.items().size() : model.units.size()];
        for (int u = 0; u < model.units.size(); u++) {
            if (model.takes[line.index][u]) {
                int cap = Math.min(left[u], model.units.get(u).cap());
                if (byPosition) {
                    for (int item : model.units.get(u).items()) {
                        caps[item] += cap;
                    }
                } else {
                    caps[u] = cap;
                }
            }
        }
    }

    /**
     * All patterns with at least one piece.
     *
     * @param onlyFull leave out those into which one more unit fits
     * @param most give up beyond so many combinations
     * @return null if given up
     */
    static @Nullable List<Pattern> of(LineModel model, Line line, int[] left, boolean onlyFull, int most, Work work) {
        BoardEnumeration board = new BoardEnumeration(model, line, left);
        if (!board.fill(most, work)) {
            return null;
        }
        List<Pattern> patterns = new ArrayList<>();
        Map<Key, Boolean> found = new LinkedHashMap<>();
        List<int[]> units = new ArrayList<>();
        for (int n = 1; n < board.vectors.size(); n++) {
            int[] counts = board.units(board.vectors.get(n));
            if (counts.length > 0) {
                found.put(new Key(counts), true);
                units.add(counts);
                patterns.add(board.pattern(n, counts));
            }
        }
        if (!onlyFull) {
            return patterns;
        }
        List<Pattern> full = new ArrayList<>();
        for (int p = 0; p < patterns.size(); p++) {
            if (!board.canGrow(units.get(p), left, found)) {
                full.add(patterns.get(p));
            }
        }
        return full;
    }

    private boolean canGrow(int[] counts, int[] left, Map<Key, Boolean> found) {
        for (int u = 0; u < counts.length; u++) {
            if (counts[u] < Math.min(left[u], model.units.get(u).cap())) {
                int[] more = counts.clone();
                more[u]++;
                if (found.containsKey(new Key(more))) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean fill(int most, Work work) {
        put(new int[caps.length], new long[] {0, -1, -1, 0});
        for (int n = 0; n < vectors.size(); n++) {
            for (int kind = 0; kind < caps.length; kind++) {
                if (vectors.get(n)[kind] < caps[kind]) {
                    extend(n, kind);
                }
            }
            if (vectors.size() > most || !work.spend(40L * caps.length)) {
                return false;
            }
        }
        return true;
    }

    private void extend(int n, int kind) {
        long at = labels.get(n)[0];
        long start = at;
        long size;
        if (byPosition) {
            start = line.earliest(kind, at);
            size = model.instance.items().get(kind).length() + model.kerf;
        } else {
            size = model.units.get(kind).size();
        }
        if (start < 0 || start + size > line.capacity) {
            return;
        }
        int[] vector = vectors.get(n).clone();
        vector[kind]++;
        Integer known = numbers.get(new Key(vector));
        long[] label = {start + size, n, kind, start};
        if (known == null) {
            put(vector, label);
        } else if (labels.get(known)[0] > label[0]) {
            labels.set(known, label);
        }
    }

    private void put(int[] vector, long[] label) {
        numbers.put(new Key(vector), vectors.size());
        vectors.add(vector);
        labels.add(label);
    }

    /** Counts of units of a combination; empty if it breaks up a set. */
    private int[] units(int[] vector) {
        if (!byPosition) {
            return vector;
        }
        int[] counts = new int[model.units.size()];
        int[] rest = vector.clone();
        for (int u = 0; u < counts.length; u++) {
            int[] items = model.units.get(u).items();
            if (items.length == 0) {
                continue;
            }
            int perSet = (int) Arrays.stream(items).filter(i -> i == items[0]).count();
            counts[u] = rest[items[0]] / perSet;
            for (int item : items) {
                rest[item] -= counts[u];
            }
        }
        for (int r : rest) {
            if (r != 0) {
                return new int[0];
            }
        }
        return counts;
    }

    private Pattern pattern(int number, int[] counts) {
        TreeMap<Integer, Integer> wanted = new TreeMap<>();
        for (int u = 0; u < counts.length; u++) {
            if (counts[u] > 0) {
                wanted.put(u, counts[u]);
            }
        }
        if (!byPosition) {
            return model.follow(line, wanted);
        }
        List<long[]> reversed = new ArrayList<>();
        for (long[] label = labels.get(number); label[1] >= 0; label = labels.get((int) label[1])) {
            reversed.add(label);
        }
        int pieces = reversed.size();
        int[] items = new int[pieces];
        long[] starts = new long[pieces];
        for (int i = 0; i < pieces; i++) {
            items[i] = (int) reversed.get(pieces - 1 - i)[2];
            starts[i] = reversed.get(pieces - 1 - i)[3];
        }
        return model.spotted(line, wanted, items, starts);
    }
}
