package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.StepKind;

/** One step that is not numbered yet, and the steps that have to wait for it. */
final class Task {

    /** At one position: spares first, then what belongs together side by side, then board by board from the origin. */
    static final Comparator<Task> MATES_TOGETHER = Comparator.comparing((Task task) -> !task.spare)
            .thenComparing(task -> task.mates)
            .thenComparingInt(task -> task.order);

    private final int order;
    private final SequenceStep step;
    private final boolean spare;
    private final Mates mates;
    private final List<Task> next = new ArrayList<>();
    private final Phase phase;
    private int waitsFor;
    private int run = 1;

    /** What is done before what, whatever position it is done at. */
    enum Phase {
        /** First cuts of sheets, where another saw makes them. */
        BREAKDOWN,
        /** Sheets are sawn to pieces. */
        SHEETS,
        /** Boards are sawn to pieces, and everything gets its size. */
        SIZES,
        /** Marked, bored, tapered: each gauge setting once over all parts. */
        SHAPES,
        /** Marked from the work. */
        FITTING
    }

    /**
     * What keeps steps together: the group, then the part, then what is marked on it and on which hand, then its number and stave or ply.
     *
     * @param group name of the group, or empty
     * @param part id, or empty for cuts that free no whole piece: those come first
     * @param work which mark of the part, from 1; 0 for everything else
     * @param hand 1 for right ones, else 0
     */
    record Mates(String group, String part, int work, int hand, int number, int member) implements Comparable<Mates> {
        static final Mates NONE = new Mates("", "", 0, 0, 0, 0);

        private static final Comparator<Mates> ORDER = Comparator.comparing((Mates m) -> !m.part.isEmpty())
                .thenComparing(Mates::group)
                .thenComparing(Mates::part)
                .thenComparingInt(Mates::work)
                .thenComparingInt(Mates::hand)
                .thenComparingInt(Mates::number)
                .thenComparingInt(Mates::member);

        @Override
        public int compareTo(Mates other) {
            return ORDER.compare(this, other);
        }
    }

    /**
     * @param order its index among all steps: in the order of boards and, on a board, of cutting
     * @param step the step, not numbered yet
     * @param phase when it is done
     * @param spare true if it makes a spare
     * @param mates what it is kept together with
     */
    Task(int order, SequenceStep step, Phase phase, boolean spare, Mates mates) {
        this.order = order;
        this.step = step;
        this.phase = phase;
        this.spare = spare;
        this.mates = mates;
    }

    int order() {
        return order;
    }

    Phase phase() {
        return phase;
    }

    @Nullable SetUp setUp() {
        return step.setUp();
    }

    /** What is marked, bored or tapered, or null. */
    SequenceStep.@Nullable Shape shape() {
        return step.shape();
    }

    boolean isRip() {
        SequenceStep.SawCut cut = step.cut();
        return cut != null && cut.direction() == Direction.RIP;
    }

    StepKind kind() {
        return step.kind();
    }

    /** Makes another step wait for this one. */
    void before(Task later) {
        next.add(later);
        later.waitsFor++;
    }

    List<Task> next() {
        return next;
    }

    /** How many steps have to be made before this one. */
    int waitsFor() {
        return waitsFor;
    }

    /** How many steps, this one included, can be made one after the other without moving stop or fence. */
    int run() {
        return run;
    }

    void makeRun(int steps) {
        run = steps;
    }

    SequenceStep numbered(int number) {
        return step.numbered(number);
    }
}
