package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SetUp;

/**
 * Makes steps one after the other, moving stop, fence and planer as seldom as a greedy choice can: a position where one stands already,
 * else the one that the preference names. Cuts to a drawn line and rests are made as soon as the position at hand has no more to do.
 */
final class Bench {

    /** Which position is set up next. */
    enum Preference {
        /** One that need not be set up again, if there is any; else the one that can do most steps now. */
        DONE_FOR_GOOD,
        /** One that need not be set up again; else the one that has to come back for least. */
        LEAST_LEFT,
        /** The one that can do most steps now. */
        MOST_STEPS
    }

    /** Work that needs no position, but is done in one go: it stands in line like a position of no length. */
    private static final SetUp JOINTER = new SetUp("jointer", Length.ZERO);

    private static final SetUp CLAMPS = new SetUp("clamps", Length.ZERO);
    private static final SetUp STORY_STICK = new SetUp("story stick", Length.ZERO);
    private static final SetUp TAPERING = new SetUp("tapering", Length.ZERO);

    private static final Comparator<SetUp> LONGEST_FIRST =
            Comparator.comparing(SetUp::stop).reversed().thenComparing(SetUp::machine);

    /** The steps of one position. */
    private static final class Pile {
        private final PriorityQueue<Task> ready = new PriorityQueue<>(Task.MATES_TOGETHER);
        private long doable;
        private long remaining;
    }

    private final Preference preference;
    private final TreeMap<SetUp, Pile> piles = new TreeMap<>(LONGEST_FIRST);
    private final PriorityQueue<Task> toDrawnLine =
            new PriorityQueue<>(Comparator.comparingInt(Bench::lineRank).thenComparing(Task.MATES_TOGETHER));
    private final Map<String, SetUp> standing = new HashMap<>();
    private final List<Task> tasks;
    private final int[] waitsFor;
    private final List<SequenceStep> steps = new ArrayList<>();
    private Task.Phase phase = Task.Phase.BREAKDOWN;
    private int setUps;

    /** A bench for these steps; each stands at the index of its order. */
    Bench(List<Task> tasks, Preference preference) {
        this.tasks = tasks;
        this.preference = preference;
        this.waitsFor = tasks.stream().mapToInt(Task::waitsFor).toArray();
    }

    List<SequenceStep> steps() {
        return steps;
    }

    int setUps() {
        return setUps;
    }

    /** Makes all steps: sheets are broken down first. */
    void work() {
        for (Task.Phase each : Task.Phase.values()) {
            work(each);
        }
    }

    private void work(Task.Phase now) {
        phase = now;
        List<Task> due = tasks.stream().filter(task -> task.phase() == now).toList();
        for (Task task : due) {
            SetUp position = position(task);
            if (position != null) {
                pile(position).remaining++;
            }
        }
        due.stream().filter(task -> waitsFor[task.order()] == 0).forEach(this::makeReady);
        toDrawnLines();
        SetUp next = choose();
        while (next != null) {
            if (next.stop().isPositive() && !next.equals(standing.put(next.machine(), next))) {
                setUps++;
            }
            workAt(next);
            next = choose();
        }
    }

    private void workAt(SetUp position) {
        Pile pile = pile(position);
        while (!pile.ready.isEmpty()) {
            Task task = pile.ready.remove();
            pile.doable -= task.run();
            pile.remaining--;
            make(task);
            // Everything at this position first; what is cut along lines in between may bring more of it.
            if (pile.ready.isEmpty()) {
                toDrawnLines();
            }
        }
        if (pile.remaining == 0) {
            piles.remove(position);
        }
    }

    private void toDrawnLines() {
        Task task = toDrawnLine.poll();
        while (task != null) {
            make(task);
            task = toDrawnLine.poll();
        }
    }

    private void make(Task task) {
        steps.add(task.numbered(steps.size() + 1));
        for (Task later : task.next()) {
            waitsFor[later.order()]--;
            if (waitsFor[later.order()] == 0 && later.phase() == phase) {
                makeReady(later);
            }
        }
    }

    private void makeReady(Task task) {
        SetUp position = position(task);
        if (position == null) {
            toDrawnLine.add(task);
        } else {
            Pile pile = pile(position);
            pile.ready.add(task);
            pile.doable += task.run();
        }
    }

    /**
     * What is cut along a line first: raw ends of all boards, then boards to sections, then the edges of what is left; so one tool goes over all
     * boards before the next is taken up. Sheets are squared before they are cut.
     */
    private static int lineRank(Task task) {
        boolean board = task.phase() == Task.Phase.SIZES;
        return switch (task.kind()) {
            case TRIM -> board && task.isRip() ? 2 : 0;
            case ROUGH_CROSSCUT -> 1;
            case CROSSCUT -> board ? 1 : 3;
            default -> 3 + task.kind().ordinal();
        };
    }

    private static @Nullable SetUp position(Task task) {
        return switch (task.kind()) {
            case JOINT -> JOINTER;
            case GLUE -> CLAMPS;
            case TAPER -> TAPERING;
            case MARK -> task.setUp() == null ? STORY_STICK : task.setUp();
            default -> task.setUp();
        };
    }

    private Pile pile(SetUp position) {
        return piles.computeIfAbsent(position, s -> new Pile());
    }

    private @Nullable SetUp choose() {
        SetUp best = null;
        Pile bestPile = null;
        int bestRank = 0;
        for (Map.Entry<SetUp, Pile> entry : piles.entrySet()) {
            Pile pile = entry.getValue();
            if (pile.ready.isEmpty()) {
                continue;
            }
            int rank = rank(entry.getKey(), pile);
            // Of positions that are done for good the longest comes first, whatever it does: long before short.
            if (bestPile == null || rank > bestRank || (rank == bestRank && rank == 0 && isBetter(pile, bestPile))) {
                best = entry.getKey();
                bestRank = rank;
                bestPile = pile;
            }
        }
        return best;
    }

    private boolean isBetter(Pile pile, Pile than) {
        return preference == Preference.LEAST_LEFT
                ? pile.remaining - pile.doable < than.remaining - than.doable
                : pile.doable > than.doable;
    }

    private int rank(SetUp position, Pile pile) {
        if (position.equals(standing.get(position.machine()))) {
            return 2;
        }
        return preference != Preference.MOST_STEPS && pile.doable == pile.remaining ? 1 : 0;
    }
}
