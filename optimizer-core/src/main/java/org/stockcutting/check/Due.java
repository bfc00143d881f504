package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Part;
import org.stockcutting.part.Shaping;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.SequenceStep.Shape;
import org.stockcutting.plan.StepKind;

/**
 * One thing that the job wants marked, bored or tapered on a copy of a part.
 *
 * @param mark which mark of the part it belongs to, or -1
 * @param setUp what it is done at, or null
 */
record Due(int mark, StepKind kind, @Nullable SetUp setUp, Shape shape) {

    private static final int NO_MARK = -1;

    /** Everything that is due on one copy, in no order. */
    static List<Due> of(Part part, int number, long length) {
        Shaping shaping = part.shaping();
        Shaping.Hand hand = hand(shaping.hand(), number);
        List<Due> all = new ArrayList<>();
        for (int i = 0; i < shaping.marks().size(); i++) {
            Mark mark = shaping.marks().get(i);
            Length end = mark.fromEnd();
            Length edge = mark.fromEdge();
            Length bore = mark.bore();
            Length depth = bore == null ? mark.depth() : null;
            if (end != null) {
                all.add(new Due(i, StepKind.MARK, null, reading(mark.purpose(), hand, end, null, depth)));
            }
            if (edge != null) {
                SetUp gauge = new SetUp("gauge", edge);
                all.add(new Due(i, StepKind.MARK, gauge, reading(mark.purpose(), hand, null, edge, depth)));
            }
            if (bore != null) {
                Shape hole = new Shape(mark.purpose(), hand, end, edge, bore, mark.depth(), null, null);
                all.add(new Due(i, StepKind.BORE, new SetUp("drill", bore), hole));
            }
        }
        if (shaping.taper() != null) {
            Length start = Length.ofNanometres(start(part, length));
            Shape taper = new Shape(
                    null,
                    hand,
                    start,
                    null,
                    null,
                    null,
                    shaping.taper().foot(),
                    shaping.taper().faces());
            all.add(new Due(NO_MARK, StepKind.TAPER, null, taper));
        }
        if (isFitted(part)) {
            all.add(new Due(NO_MARK, StepKind.MARK, null, reading(Shape.FROM_THE_WORK, hand, null, null, null)));
        }
        return all;
    }

    /** Where the taper of a part begins. */
    static long start(Part part, long length) {
        Length said =
                part.shaping().taper() == null ? null : part.shaping().taper().start();
        if (said != null) {
            return said.nanometres();
        }
        long start = length / 4;
        for (Mark mark : part.shaping().marks()) {
            if (mark.fromEnd() != null) {
                long across = mark.bore() == null ? 0 : mark.bore().nanometres();
                start = Math.max(start, mark.fromEnd().nanometres() + across / 2 + across % 2);
            }
        }
        return start;
    }

    private static Shape reading(
            String purpose,
            Shaping.@Nullable Hand hand,
            @Nullable Length end,
            @Nullable Length edge,
            @Nullable Length depth) {
        return new Shape(purpose, hand, end, edge, null, depth, null, null);
    }

    private static Shaping.@Nullable Hand hand(Shaping.Hand hands, int number) {
        if (hands == Shaping.Hand.PAIRS) {
            return Math.floorMod(number, 2) == 0 ? Shaping.Hand.RIGHT : Shaping.Hand.LEFT;
        }
        return hands == Shaping.Hand.NONE ? null : hands;
    }

    /** True for parts that get their length when the work they go into stands. */
    static boolean isFitted(Part part) {
        return part.shaping().fit() == Shaping.Fit.AFTER_ASSEMBLY;
    }

    boolean is(SequenceStep step) {
        return kind == step.kind()
                && shape.equals(step.shape())
                && (setUp == null ? step.setUp() == null : setUp.equals(step.setUp()));
    }

    /** What is wrong with doing this now to a piece; what else is due on it is in the list. */
    void judge(Workpiece work, List<Due> others, List<String> wrong) {
        boolean mitreDue = work.milling.rough().part().shaping().ends() != null && !work.mitred;
        boolean endFinal = work.length == work.finalLength() && !mitreDue;
        boolean edgeFinal = work.width == work.widthToReach();
        boolean last = kind == StepKind.TAPER || Shape.FROM_THE_WORK.equals(shape.purpose());
        if (!work.isFlat()) {
            wrong.add("is marked before it is planed");
        }
        if (((last || shape.fromEnd() != null) && !endFinal) || ((last || shape.fromEdge() != null) && !edgeFinal)) {
            wrong.add("is measured from an end or edge that is sawn off later");
        }
        for (Due other : others) {
            boolean before = kind == StepKind.BORE ? other.mark == mark && other.kind == StepKind.MARK : last;
            if (before) {
                wrong.add("comes before " + other.text());
                return;
            }
        }
    }

    String text() {
        return "the " + kind.word() + (shape.purpose() == null ? "" : " of " + shape.purpose());
    }
}
