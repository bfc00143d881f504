package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.plan.SequenceStep;

/** One slot of one board, what must wait for it, and how it will read in the sequence. */
final class Cut {

    private final int order;
    private final SequenceStep step;
    private final List<Cut> next = new ArrayList<>();
    private int run = 1;

    /**
     * @param order place in the order of boards and, on a board, from the origin: no cut comes before one that it waits for
     * @param step the step, not numbered yet
     */
    Cut(int order, SequenceStep step) {
        this.order = order;
        this.step = step;
    }

    int order() {
        return order;
    }

    SequenceStep.@Nullable SetUp setUp() {
        return step.setUp();
    }

    /** Cuts that can be made once this one is. */
    List<Cut> next() {
        return next;
    }

    /** How many cuts, this one included, can be made one after the other without moving stop or fence. */
    int run() {
        return run;
    }

    void makeRun(int cuts) {
        run = cuts;
    }

    SequenceStep numbered(int number) {
        return new SequenceStep(
                number,
                step.kind(),
                step.setUp(),
                step.board(),
                step.reading(),
                step.part(),
                step.number(),
                step.caution());
    }
}
