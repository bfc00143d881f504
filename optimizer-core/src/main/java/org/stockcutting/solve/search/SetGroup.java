package org.stockcutting.solve.search;

import java.util.List;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.optaplanner.core.api.score.stream.uni.UniConstraintCollector;
import org.stockcutting.solve.instance.Instance;

/** Items of which every board holds whole sets only. */
final class SetGroup {

    private final int index;
    private final List<Integer> items;
    private final List<Integer> perSet;

    SetGroup(int index, Instance.Group group) {
        this.index = index;
        this.items = group.items();
        this.perSet = group.perSet();
    }

    /** Counts the pieces of one group on one board and says how far they are from whole sets. */
    static final UniConstraintCollector<Piece, Tally, Integer> MISFIT = new UniConstraintCollector<>() {
        @Override
        public Supplier<Tally> supplier() {
            return Tally::new;
        }

        @Override
        public BiFunction<Tally, Piece, Runnable> accumulator() {
            return Tally::add;
        }

        @Override
        public Function<Tally, Integer> finisher() {
            return Tally::misfit;
        }
    };

    boolean holds(int item) {
        return items.contains(item);
    }

    /** Least number of pieces to add or take away until the counts, in the order of the group's items, are whole sets. */
    int misfit(int[] counts) {
        int most = 0;
        for (int i = 0; i < counts.length; i++) {
            most = Math.max(most, counts[i] / perSet.get(i) + 1);
        }
        int best = Integer.MAX_VALUE;
        for (int sets = 0; sets <= most; sets++) {
            int misfit = 0;
            for (int i = 0; i < counts.length; i++) {
                misfit += Math.abs(counts[i] - sets * perSet.get(i));
            }
            best = Math.min(best, misfit);
        }
        return best;
    }

    /** How many of each of the group's items are in the list. */
    int[] count(List<Integer> pieces) {
        int[] counts = new int[items.size()];
        for (int item : pieces) {
            int at = items.indexOf(item);
            if (at >= 0) {
                counts[at]++;
            }
        }
        return counts;
    }

    @Override
    public int hashCode() {
        return index;
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    /** Changes as pieces come and go. */
    static final class Tally {
        private @Nullable SetGroup group;
        private int[] counts = new int[0];

        private Runnable add(Piece piece) {
            SetGroup own = Objects.requireNonNull(piece.group());
            if (group == null) {
                group = own;
                counts = new int[own.items.size()];
            }
            int at = own.items.indexOf(piece.item());
            counts[at]++;
            return () -> counts[at]--;
        }

        private int misfit() {
            return group == null ? 0 : group.misfit(counts);
        }
    }
}
