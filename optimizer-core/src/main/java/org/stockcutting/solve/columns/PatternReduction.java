package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Fewer patterns on the same boards: a few patterns are taken out, those of few copies first, and what they made is placed again with one
 * pattern less. Where that cannot be done, as many patterns of more uneven copies will do: they are the easier to do without next.
 *
 * <p>Boards, and with them cost, stay the same or fewer; neither does a piece move from a board on hand to a bought one, nor does the
 * longest leftover get shorter where it is to be kept.
 */
final class PatternReduction {

    private static final int MOST_REMOVED = 8;
    private static final long NODES = 3_000;
    /** Tries without success, for each pattern there is, after which it gives up. */
    private static final int PATIENCE = 300;

    private final LineModel model;
    private final List<Boolean> onHand;
    private final boolean keepsLongest;
    private final Random random;
    private final Work work;
    private List<Cut> cuts;
    private List<Cut> best;

    /**
     * @param keepsLongest true if the longest leftover may not get shorter
     */
    PatternReduction(
            LineModel model, List<Cut> start, List<Boolean> onHand, boolean keepsLongest, long seed, Work work) {
        this.keepsLongest = keepsLongest;
        this.model = model;
        this.onHand = onHand;
        this.random = new Random(seed);
        this.work = work;
        this.cuts = joined(start);
        this.best = cuts;
    }

    /** The plan of fewest patterns that was met; of several, the one whose patterns together need fewest positions of the stop. */
    List<Cut> run() {
        int idle = 0;
        while (cuts.size() > 1 && idle < PATIENCE * cuts.size() && work.spend(200)) {
            attempt();
            idle++;
            if (cuts.size() < best.size() || (cuts.size() == best.size() && stops(cuts) < stops(best))) {
                best = cuts;
                idle = 0;
            }
        }
        return best;
    }

    private void attempt() {
        List<Cut> rest = new ArrayList<>(cuts);
        List<Cut> removed = remove(rest);
        if (removed.size() < 2) {
            return;
        }
        List<Cut> better = new Refill(model, removed, random, NODES, work).solve(removed.size() - 1);
        if (better == null) {
            List<Cut> other = new Refill(model, removed, random, NODES, work).solve(removed.size());
            better = other != null && squares(other) >= squares(removed) ? other : null;
        }
        if (better != null && keepsWishes(rest, removed, better)) {
            rest.addAll(better);
            cuts = joined(rest);
        }
    }

    /** Takes two or more patterns out, those of few copies and with units in common more often. */
    private List<Cut> remove(List<Cut> rest) {
        @Nullable Cut longest = keepsLongest ? longestLeftover(rest) : null;
        List<Cut> removed = new ArrayList<>();
        int wanted = Math.min(rest.size(), 2 + random.nextInt(MOST_REMOVED - 1));
        TreeSet<Integer> units = new TreeSet<>();
        while (removed.size() < wanted) {
            double[] weights = new double[rest.size()];
            double sum = 0;
            for (int i = 0; i < weights.length; i++) {
                Cut cut = rest.get(i);
                weights[i] = cut == longest ? 0 : (1.0 + 6 * common(cut, units)) / Math.sqrt(cut.copies());
                sum += weights[i];
            }
            if (sum == 0) {
                break;
            }
            double at = random.nextDouble() * sum;
            int chosen = 0;
            while (chosen < weights.length - 1 && (at >= weights[chosen] || weights[chosen] == 0)) {
                at -= weights[chosen++];
            }
            Cut cut = rest.remove(chosen);
            removed.add(cut);
            for (int unit : cut.pattern().units()) {
                units.add(unit);
            }
        }
        return removed;
    }

    private static int common(Cut cut, TreeSet<Integer> units) {
        int common = 0;
        for (int unit : cut.pattern().units()) {
            common += units.contains(unit) ? 1 : 0;
        }
        return common;
    }

    /** The only pattern that leaves the longest leftover, or null where there are several or none. */
    private @Nullable Cut longestLeftover(List<Cut> all) {
        Cut only = null;
        long most = -1;
        for (Cut cut : all) {
            long leftover = leftover(cut);
            if (leftover > most) {
                most = leftover;
                only = cut;
            } else if (leftover == most) {
                only = null;
            }
        }
        return only;
    }

    private long leftover(Cut cut) {
        Line line = model.lines.get(cut.pattern().line());
        return line.leftover(model.size(cut.pattern()));
    }

    private boolean keepsWishes(List<Cut> rest, List<Cut> removed, List<Cut> better) {
        return cost(better) <= cost(removed)
                && bought(better) <= bought(removed)
                && (!keepsLongest || Math.max(longest(rest), longest(better)) >= longest(cuts));
    }

    private static long cost(List<Cut> some) {
        return some.stream()
                .mapToLong(cut -> cut.copies() * cut.pattern().cost())
                .sum();
    }

    private static long squares(List<Cut> some) {
        return some.stream()
                .mapToLong(cut -> (long) cut.copies() * cut.copies())
                .sum();
    }

    /** Size of all that lies on bought boards. */
    private long bought(List<Cut> some) {
        return some.stream()
                .filter(cut -> !onHand.get(cut.pattern().line()))
                .mapToLong(cut -> cut.copies() * model.size(cut.pattern()))
                .sum();
    }

    private long longest(List<Cut> some) {
        return some.stream().mapToLong(this::leftover).max().orElse(0);
    }

    /** Different lengths of each pattern, added up: how often the stop is moved where each pattern is cut by itself. */
    private int stops(List<Cut> some) {
        int stops = 0;
        for (Cut cut : some) {
            stops += (int) Arrays.stream(cut.pattern().units())
                    .flatMap(unit -> Arrays.stream(model.units.get(unit).items()))
                    .mapToLong(item -> model.instance.items().get(item).length())
                    .distinct()
                    .count();
        }
        return stops;
    }

    private static List<Cut> joined(List<Cut> some) {
        Map<String, Cut> byKey = new LinkedHashMap<>();
        some.stream()
                .sorted(Comparator.<Cut>comparingInt(cut -> cut.pattern().line()))
                .forEach(cut ->
                        byKey.merge(cut.pattern().key(), cut, (a, b) -> new Cut(a.pattern(), a.copies() + b.copies())));
        return List.copyOf(byKey.values());
    }
}
