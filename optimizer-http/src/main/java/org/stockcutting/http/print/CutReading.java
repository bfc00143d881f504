package org.stockcutting.http.print;

import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.StepKind;

/** Where the tape is read for a step at the saw: a trim where the good wood begins, every other cut where the piece ends. */
public final class CutReading {

    private CutReading() {}

    /** The reading, from the origin end or edge of the board. */
    public static Length of(SequenceStep step, SawCut cut) {
        SequenceStep.Wood left = cut.left();
        Length to = cut.to();
        if (step.kind() != StepKind.TRIM || left == null || to == null) {
            return cut.reading();
        }
        Length begins = cut.direction() == Direction.CROSSCUT ? left.x() : left.y();
        return begins.equals(to) ? to : cut.reading();
    }
}
