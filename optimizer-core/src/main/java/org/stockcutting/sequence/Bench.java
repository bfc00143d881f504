package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SetUp;

/**
 * Makes cuts one after the other, moving stop and fence as seldom as a greedy choice can: a position where a stop or fence stands
 * already, else the one that the preference names. Cuts to a drawn line are made as soon as they can be.
 */
final class Bench {

    /** Which position is set up next. */
    enum Preference {
        /** The one that can do most cuts now. */
        MOST_CUTS,
        /** One that need not be set up again, if there is any; else as above. */
        DONE_FOR_GOOD
    }

    private static final Comparator<SetUp> LONGEST_FIRST =
            Comparator.comparing(SetUp::stop).reversed().thenComparing(SetUp::machine);

    /** The cuts of one position. */
    private static final class Pile {
        private final PriorityQueue<Cut> ready = new PriorityQueue<>(Comparator.comparingInt(Cut::order));
        private long doable;
        private long remaining;
    }

    private final Preference preference;
    private final TreeMap<SetUp, Pile> piles = new TreeMap<>(LONGEST_FIRST);
    private final PriorityQueue<Cut> toDrawnLine = new PriorityQueue<>(Comparator.comparingInt(Cut::order));
    private final Map<String, SetUp> standing = new HashMap<>();
    private final List<SequenceStep> steps = new ArrayList<>();
    private int setUps;

    Bench(Preference preference) {
        this.preference = preference;
    }

    List<SequenceStep> steps() {
        return steps;
    }

    int setUps() {
        return setUps;
    }

    /** Makes all cuts of some boards. */
    void work(BoardReader boards) {
        for (Cut cut : boards.cuts()) {
            SetUp setUp = cut.setUp();
            if (setUp != null) {
                piles.computeIfAbsent(setUp, s -> new Pile()).remaining++;
            }
        }
        boards.heads().forEach(this::makeReady);
        cutToDrawnLines();
        SetUp next = choose();
        while (next != null) {
            if (!next.equals(standing.put(next.machine(), next))) {
                setUps++;
            }
            cutAt(next);
            next = choose();
        }
    }

    private void cutAt(SetUp setUp) {
        Pile pile = pile(setUp);
        Cut cut = pile.ready.poll();
        while (cut != null) {
            pile.doable -= cut.run();
            pile.remaining--;
            make(cut);
            cutToDrawnLines();
            cut = pile.ready.poll();
        }
        if (pile.remaining == 0) {
            piles.remove(setUp);
        }
    }

    private void cutToDrawnLines() {
        Cut cut = toDrawnLine.poll();
        while (cut != null) {
            make(cut);
            cut = toDrawnLine.poll();
        }
    }

    private void make(Cut cut) {
        steps.add(cut.numbered(steps.size() + 1));
        cut.next().forEach(this::makeReady);
    }

    private void makeReady(Cut cut) {
        SetUp setUp = cut.setUp();
        if (setUp == null) {
            toDrawnLine.add(cut);
        } else {
            Pile pile = pile(setUp);
            pile.ready.add(cut);
            pile.doable += cut.run();
        }
    }

    private Pile pile(SetUp setUp) {
        return piles.computeIfAbsent(setUp, s -> new Pile());
    }

    private @Nullable SetUp choose() {
        SetUp best = null;
        int bestRank = 0;
        long bestDoable = 0;
        for (Map.Entry<SetUp, Pile> entry : piles.entrySet()) {
            Pile pile = entry.getValue();
            if (pile.ready.isEmpty()) {
                continue;
            }
            int rank = rank(entry.getKey(), pile);
            // Of positions that are done for good the longest comes first, whatever it does: long before short.
            boolean better =
                    best == null || rank > bestRank || (rank == bestRank && rank == 0 && pile.doable > bestDoable);
            if (better) {
                best = entry.getKey();
                bestRank = rank;
                bestDoable = pile.doable;
            }
        }
        return best;
    }

    private int rank(SetUp setUp, Pile pile) {
        if (setUp.equals(standing.get(setUp.machine()))) {
            return 2;
        }
        return preference == Preference.DONE_FOR_GOOD && pile.doable == pile.remaining ? 1 : 0;
    }
}
