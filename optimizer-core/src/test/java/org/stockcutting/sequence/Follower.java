package org.stockcutting.sequence;

import java.util.HashSet;
import java.util.Set;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.Wood;

/** Follows the cuts of boards with the wood in hand: which rectangles lie on the bench. */
final class Follower {

    private record Lying(String board, Wood wood) {}

    private final Set<Lying> bench = new HashSet<>();

    void lay(Layout layout, String board) {
        put(board, new Wood(Length.ZERO, Length.ZERO, layout.length(), layout.width()));
    }

    private void put(String board, Wood wood) {
        if (wood.length().isPositive() && wood.width().isPositive()) {
            bench.add(new Lying(board, wood));
        }
    }

    /** Makes the cut that a step asks for; an empty text, or what is wrong. */
    String follow(SequenceStep step) {
        SawCut cut = step.cut();
        if (cut == null || cut.to() == null) {
            return "";
        }
        Wood on = cut.on();
        if (!bench.remove(new Lying(step.board(), on))) {
            return step + " finds no such piece of wood";
        }
        Wood near;
        Wood far;
        if (cut.direction() == Direction.CROSSCUT) {
            Length end = on.x().plus(on.length());
            near = new Wood(on.x(), on.y(), cut.reading().minus(on.x()), on.width());
            far = new Wood(cut.to(), on.y(), end.minus(cut.to()), on.width());
        } else {
            Length end = on.y().plus(on.width());
            near = new Wood(on.x(), on.y(), on.length(), cut.reading().minus(on.y()));
            far = new Wood(on.x(), cut.to(), on.length(), end.minus(cut.to()));
        }
        put(step.board(), near);
        put(step.board(), far);
        boolean left = near.equals(cut.left()) || far.equals(cut.left()) || cut.left() == null;
        return left ? "" : step + " leaves something else";
    }

    boolean holds(String board, Length x, Length y, Length length, Length width) {
        return bench.contains(new Lying(board, new Wood(x, y, length, width)));
    }
}
