package org.stockcutting.sequence;

import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.SequenceStep.Wood;

/** A rectangle in raw board coordinates: what lies on the saw. */
record Block(Length fromX, Length fromY, Length toX, Length toY) {

    Length length() {
        return toX.minus(fromX);
    }

    Length width() {
        return toY.minus(fromY);
    }

    Length from(Direction cut) {
        return cut == Direction.CROSSCUT ? fromX : fromY;
    }

    Length to(Direction cut) {
        return cut == Direction.CROSSCUT ? toX : toY;
    }

    /** Extent along the axis that the cut divides. */
    Length extent(Direction cut) {
        return to(cut).minus(from(cut));
    }

    boolean isEmpty() {
        return !length().isPositive() || !width().isPositive();
    }

    Wood wood() {
        return new Wood(fromX, fromY, length(), width());
    }

    /** The part of this block between two positions along the axis that the cut divides. */
    Block between(Direction cut, Length from, Length to) {
        return cut == Direction.CROSSCUT ? new Block(from, fromY, to, toY) : new Block(fromX, from, toX, to);
    }

    /** What becomes of piece i of a node that divides this block. */
    Block piece(CutNode.Cuts node, int i) {
        return pieces(node, i, i);
    }

    /** The stick that still holds pieces first to last of a node that divides this block. */
    Block pieces(CutNode.Cuts node, int first, int last) {
        Length from =
                first == 0 ? from(node.cut()) : node.slots().get(first - 1).to();
        Length to = last == node.slots().size()
                ? to(node.cut())
                : node.slots().get(last).from();
        return between(node.cut(), from, to);
    }
}
