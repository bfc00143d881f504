package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Places what a few patterns made on the same boards with fewer patterns, by depth-first search over patterns of falling copies. No
 * board is cut worse than all of them together were, which leaves few patterns to look at; of the last two, the first leaves a remainder
 * that the copies of the second divide.
 *
 * <p>H. Foerster, G. Waescher, International Journal of Production Research 38 (2000) 1657-1676: patterns combined two into one, three
 * into two; R. W. Haessler, Operations Research 23 (1975) 483-493: repeated patterns first.
 */
final class Refill {

    /** Patterns tried at one level before the level is given up. */
    private static final int BRANCHES = 6;
    /** Elementary operations of one node. */
    private static final long PER_NODE = 60;

    private final LineModel model;
    private final Work work;
    private final int[] unit;
    private final long[] size;
    private final int[] left;
    private final List<Line> lines;
    private final int[] boards;
    private final List<Cut> cuts = new ArrayList<>();
    private long nodes;
    private long told;

    /**
     * @param removed patterns that were taken out
     * @param nodes most nodes of the search
     */
    Refill(LineModel model, List<Cut> removed, Random random, long nodes, Work work) {
        this.model = model;
        this.work = work;
        this.nodes = nodes;
        this.told = nodes;
        TreeMap<Integer, Integer> demand = new TreeMap<>();
        TreeMap<Integer, Integer> copies = new TreeMap<>();
        for (Cut cut : removed) {
            Pattern pattern = cut.pattern();
            copies.merge(pattern.line(), cut.copies(), Integer::sum);
            for (int i = 0; i < pattern.units().length; i++) {
                demand.merge(pattern.units()[i], pattern.counts()[i] * cut.copies(), Integer::sum);
            }
        }
        List<Integer> order = new ArrayList<>(demand.keySet());
        order.sort((a, b) ->
                Long.compare(model.units.get(b).size(), model.units.get(a).size()));
        for (int i = 1; i < order.size(); i++) {
            if (random.nextInt(3) == 0) {
                Collections.swap(order, i, i - 1);
            }
        }
        this.unit = order.stream().mapToInt(u -> u).toArray();
        this.size = order.stream().mapToLong(u -> model.units.get(u).size()).toArray();
        this.left = order.stream().mapToInt(demand::get).toArray();
        this.lines = copies.keySet().stream().map(model.lines::get).toList();
        this.boards = copies.values().stream().mapToInt(c -> c).toArray();
    }

    /** The new patterns, at most {@code most}, or null if none were found. */
    @Nullable List<Cut> solve(int most) {
        boolean found = fill(most, Integer.MAX_VALUE);
        work.spend(PER_NODE * (told - nodes));
        told = nodes;
        return found ? List.copyOf(cuts) : null;
    }

    private boolean fill(int patterns, int mostCopies) {
        long wanted = leftSize();
        if (wanted == 0) {
            return true;
        }
        long room = 0;
        long longest = 0;
        int most = 0;
        for (int l = 0; l < boards.length; l++) {
            room += boards[l] * lines.get(l).capacity;
            longest = Math.max(longest, boards[l] > 0 ? lines.get(l).capacity : 0);
            most = Math.max(most, boards[l]);
        }
        if (patterns == 0 || longest == 0 || room < wanted) {
            return false;
        }
        most = Math.min(most, mostCopies);
        long need = (wanted + longest - 1) / longest;
        for (int copies = most; (long) copies * patterns >= need && copies > 0 && nodes > 0; copies--) {
            for (int l = 0; l < boards.length; l++) {
                if (boards[l] >= copies && tryCopies(l, copies, patterns, room - wanted)) {
                    return true;
                }
            }
        }
        return false;
    }

    private long leftSize() {
        long sum = 0;
        for (int i = 0; i < left.length; i++) {
            sum += left[i] * size[i];
        }
        return sum;
    }

    private boolean tryCopies(int line, int copies, int patterns, long slack) {
        Level level = new Level(line, copies, patterns);
        if (patterns == 1) {
            level.others = 1;
            return level.pick(0, lines.get(line).capacity, lines.get(line).capacity, true);
        }
        if (patterns > 2) {
            return level.pick(0, lines.get(line).capacity, slack / copies, false);
        }
        long wanted = leftSize();
        long own = lines.get(line).capacity;
        for (int l = 0; l < boards.length; l++) {
            int free = boards[l] - (l == line ? copies : 0);
            for (int others = Math.min(copies, free); others > 0 && nodes > 0; others--) {
                long least = Math.max(0, wanted - others * lines.get(l).capacity);
                level.others = others;
                if (least <= copies * own && level.pick(0, own, own - (least + copies - 1) / copies, false)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** One pattern that is being put together. */
    private final class Level {
        private final int line;
        private final int copies;
        private final int patterns;
        private final int[] counts = new int[unit.length];
        private final long[] most = new long[unit.length + 1];
        private int branches = BRANCHES;
        /** Copies of the pattern behind this one, where that is the last; 0 if unknown. */
        private int others;

        Level(int line, int copies, int patterns) {
            this.line = line;
            this.copies = copies;
            this.patterns = patterns;
            for (int i = unit.length - 1; i >= 0; i--) {
                most[i] = most[i + 1] + cap(i) * size[i];
            }
        }

        private int cap(int i) {
            return model.takes[lines.get(line).index][unit[i]]
                    ? Math.min(left[i] / copies, model.units.get(unit[i]).perBoard())
                    : 0;
        }

        /**
         * Chooses the counts from unit i on.
         *
         * @param room what is still free
         * @param slack what may stay free
         * @param all true if everything left must be taken
         */
        boolean pick(int i, long room, long slack, boolean all) {
            if (nodes-- <= 0 || branches <= 0 || room - most[i] > slack) {
                return false;
            }
            if (i == unit.length) {
                branches--;
                return use();
            }
            int cap = (int) Math.min(cap(i), room / Math.max(1, size[i]));
            if (all) {
                if (left[i] % copies != 0 || left[i] / copies > cap) {
                    return false;
                }
                counts[i] = left[i] / copies;
                return pick(i + 1, room - counts[i] * size[i], slack, true);
            }
            for (int count = cap; count >= 0; count--) {
                if (others == 0 || isDivided(i, left[i] - count * copies)) {
                    counts[i] = count;
                    if (pick(i + 1, room - count * size[i], slack, false)) {
                        return true;
                    }
                }
            }
            return false;
        }

        private boolean isDivided(int i, int rest) {
            return rest % others == 0
                    && rest / others <= model.units.get(unit[i]).perBoard();
        }

        private boolean use() {
            TreeMap<Integer, Integer> wanted = new TreeMap<>();
            int pieces = 0;
            for (int i = 0; i < unit.length; i++) {
                if (counts[i] > 0) {
                    wanted.put(unit[i], counts[i]);
                    pieces += counts[i];
                }
            }
            if (pieces == 0) {
                return false;
            }
            Pattern pattern = model.follow(lines.get(line), wanted);
            if (!Arrays.equals(pattern.counts(), LineModel.values(wanted))) {
                return false;
            }
            move(-1);
            cuts.add(new Cut(pattern, copies));
            if (fill(patterns - 1, copies)) {
                return true;
            }
            cuts.remove(cuts.size() - 1);
            move(1);
            return false;
        }

        private void move(int sign) {
            boards[line] += sign * copies;
            for (int i = 0; i < unit.length; i++) {
                left[i] += sign * counts[i] * copies;
            }
        }
    }
}
