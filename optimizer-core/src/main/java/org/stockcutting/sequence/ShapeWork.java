package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Part;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Shaping.Hand;
import org.stockcutting.part.Taper;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.SequenceStep.Shape;
import org.stockcutting.plan.StepKind;

/**
 * What is done to pieces that have their size: lengths taken off the story stick, lines gauged, holes bored, tapers last, since they take
 * away the edges that everything is measured from. Everything has its size before the first line is drawn, so that one setting of the
 * gauge serves all parts.
 */
final class ShapeWork {

    private static final String GAUGE = "gauge";
    private static final String DRILL = "drill";

    private final Workshop workshop;

    ShapeWork(Workshop workshop) {
        this.workshop = workshop;
    }

    /** Two that lie head to foot in one blank: the first taper parts them. */
    void pair(Part part, Piece first, @Nullable String board, @Nullable Task sized) {
        Piece second = new Piece(first.part(), first.number() + 1, null);
        Task parting = shape(part, first, board, sized, workshop.cautions().ofParting(part));
        Task other = shape(part, second, board, sized, workshop.cautions().ofParted(part));
        if (parting != null && other != null) {
            parting.before(other);
        }
    }

    /** Puts down all that is to be done to one copy of a part, once the step before is made. */
    void shape(Part part, Piece piece, @Nullable String board, @Nullable Task sized) {
        shape(part, piece, board, sized, null);
    }

    private @Nullable Task shape(
            Part part, Piece piece, @Nullable String board, @Nullable Task sized, @Nullable String caution) {
        Task tapered = null;
        Shaping shaping = part.shaping();
        Hand hand = shaping.hand().of(piece.number());
        List<Task> before = new ArrayList<>();
        for (int i = 0; i < shaping.marks().size(); i++) {
            Task last = mark(shaping.marks().get(i), i + 1, hand, piece, board, sized);
            if (last != null) {
                before.add(last);
            }
        }
        Taper taper = shaping.taper();
        if (taper != null) {
            Length start = shaping.taperStart(part.coreLength());
            Shape shape = new Shape(null, hand, start, null, null, null, taper.foot(), taper.faces());
            Task last = workshop.add(
                    Workshop.Draft.shaping(StepKind.TAPER, null, board, piece, shape, caution),
                    Task.Phase.SHAPES,
                    1,
                    sized);
            before.forEach(task -> task.before(last));
            tapered = last;
        }
        if (shaping.fit() == Shaping.Fit.AFTER_ASSEMBLY) {
            Shape shape = new Shape(Shape.FROM_THE_WORK, hand, null, null, null, null, null, null);
            workshop.add(
                    Workshop.Draft.shaping(StepKind.MARK, null, board, piece, shape), Task.Phase.FITTING, 1, sized);
        }
        return tapered;
    }

    private @Nullable Task mark(
            Mark mark, int work, @Nullable Hand hand, Piece piece, @Nullable String board, @Nullable Task sized) {
        Task last = null;
        Length depth = mark.bore() == null ? mark.depth() : null;
        if (mark.fromEnd() != null) {
            Shape shape = new Shape(mark.purpose(), hand, mark.fromEnd(), null, null, depth, null, null);
            last = add(StepKind.MARK, null, board, piece, shape, work, sized);
        }
        if (mark.fromEdge() != null) {
            Shape shape = new Shape(mark.purpose(), hand, null, mark.fromEdge(), null, depth, null, null);
            SetUp gauge = new SetUp(GAUGE, mark.fromEdge());
            last = add(StepKind.MARK, gauge, board, piece, shape, work, last == null ? sized : last);
        }
        if (mark.bore() != null) {
            Shape shape = new Shape(
                    mark.purpose(), hand, mark.fromEnd(), mark.fromEdge(), mark.bore(), mark.depth(), null, null);
            SetUp drill = new SetUp(DRILL, mark.bore());
            last = add(StepKind.BORE, drill, board, piece, shape, work, last == null ? sized : last);
        }
        return last;
    }

    private Task add(
            StepKind kind,
            @Nullable SetUp setUp,
            @Nullable String board,
            Piece piece,
            Shape shape,
            int work,
            @Nullable Task after) {
        return workshop.add(Workshop.Draft.shaping(kind, setUp, board, piece, shape), Task.Phase.SHAPES, work, after);
    }
}
