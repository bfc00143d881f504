package org.stockcutting.check;

import java.util.List;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.Cuts;
import org.stockcutting.pattern.CutNode.Slot;
import org.stockcutting.pattern.Direction;

/**
 * A crooked board loses width where it is ripped, and the more the longer it still is: what is ripped off a stick must leave room for
 * the crook of the whole stick. Called only on trees that {@link TreeWalk} has found whole.
 */
final class CrookCheck {

    private final Board board;
    private final Inspection inspection;
    private final String pointer;

    private CrookCheck(Board board, Inspection inspection, String pointer) {
        this.board = board;
        this.inspection = inspection;
        this.pointer = pointer;
    }

    static void check(Board board, CutNode root, Inspection inspection, String pointer) {
        if (board.evenness().crook() > 0) {
            new CrookCheck(board, inspection, pointer).visit(root, board.raw(), 0);
        }
    }

    /**
     * @param ripped length of the stick when it was first ripped, 0 if it was not yet
     */
    private void visit(CutNode node, Rect rect, long ripped) {
        if (node instanceof CutNode.PartLeaf leaf) {
            long farTrim = board.raw().y1() - board.usable().y1();
            inspection.require(
                    board.evenness().reaches(rect.y1() + farTrim, rect.x1(), ripped),
                    Cause.OUT_OF_TRUE,
                    pointer,
                    "frees a " + leaf.part() + " at " + rect.text() + ", but the crook of the stick that is ripped, "
                            + Inspection.mm(ripped) + " long, takes more of its width");
        }
        if (!(node instanceof Cuts cuts)) {
            return;
        }
        boolean across = cuts.cut() == Direction.CROSSCUT;
        long stick = across || ripped > 0 || onlyTrims(cuts)
                ? ripped
                : rect.intersect(board.usable()).length();
        long at = across ? rect.x0() : rect.y0();
        List<Slot> slots = cuts.slots();
        for (int i = 0; i <= slots.size(); i++) {
            long end = across ? rect.x1() : rect.y1();
            long from = i < slots.size() ? slots.get(i).from().nanometres() : end;
            visit(cuts.pieces().get(i), TreeWalk.part(rect, at, from, across), stick);
            at = i < slots.size() ? slots.get(i).to().nanometres() : end;
        }
    }

    /** Trimming along an edge is not yet ripping: the edge is made straight once the stick is short. */
    private boolean onlyTrims(Cuts cuts) {
        return cuts.slots().stream()
                .allMatch(s -> TreeWalk.isTrimSlot(board, s.from().nanometres(), s.to().nanometres(), false));
    }
}
