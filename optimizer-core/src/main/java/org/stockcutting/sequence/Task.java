package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
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
    private final boolean breaksDown;
    private int waitsFor;
    private int run = 1;

    /**
     * What keeps steps together: the group, then the part, then its number and stave or ply.
     *
     * @param group name of the group, or empty
     * @param part id, or empty for cuts that free no whole piece: those come first
     */
    record Mates(String group, String part, int number, int member) implements Comparable<Mates> {
        static final Mates NONE = new Mates("", "", 0, 0);

        private static final Comparator<Mates> ORDER = Comparator.comparing((Mates m) -> !m.part.isEmpty())
                .thenComparing(Mates::group)
                .thenComparing(Mates::part)
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
     * @param breaksDown true for the cuts of sheets, which come before everything else
     * @param spare true if it makes a spare
     * @param mates what it is kept together with
     */
    Task(int order, SequenceStep step, boolean breaksDown, boolean spare, Mates mates) {
        this.order = order;
        this.step = step;
        this.breaksDown = breaksDown;
        this.spare = spare;
        this.mates = mates;
    }

    int order() {
        return order;
    }

    boolean breaksDown() {
        return breaksDown;
    }

    @Nullable SetUp setUp() {
        return step.setUp();
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
        return new SequenceStep(
                number,
                step.kind(),
                step.setUp(),
                step.board(),
                step.cut(),
                step.piece(),
                step.behind(),
                step.caution(),
                step.reason());
    }
}
