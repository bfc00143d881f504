package org.stockcutting.sequence;

import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;

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

    /** The part of this block between two positions along the axis that the cut divides. */
    Block between(Direction cut, Length from, Length to) {
        return cut == Direction.CROSSCUT ? new Block(from, fromY, to, toY) : new Block(fromX, from, toX, to);
    }

    /** What becomes of piece i of a node that divides this block. */
    Block piece(CutNode.Cuts node, int i) {
        Length from = i == 0 ? from(node.cut()) : node.slots().get(i - 1).to();
        Length to =
                i == node.slots().size() ? to(node.cut()) : node.slots().get(i).from();
        return between(node.cut(), from, to);
    }

    /** What lies on the saw when cut i of a node is made: everything from the end of the cut before. */
    Block underCut(CutNode.Cuts node, int i) {
        Length from = i == 0 ? from(node.cut()) : node.slots().get(i - 1).to();
        return between(node.cut(), from, to(node.cut()));
    }
}
