package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep;

/** One board as it now is: the pieces that are free, and the rectangles that are left, each with the cuts it was still to get. */
final class SawnBoard {

    /**
     * A rectangle that is not a finished piece.
     *
     * @param area where it was on the board
     * @param rest what was still planned for it, in the board's coordinates
     */
    record Block(Area area, CutNode rest) {}

    private final PlannedBoard board;
    private final Set<DoneCuts.Sawn> sawn;
    private final List<PlacedPiece> finished = new ArrayList<>();
    private final List<Block> blocks = new ArrayList<>();

    private SawnBoard(PlannedBoard board, Set<DoneCuts.Sawn> sawn) {
        this.board = board;
        this.sawn = sawn;
    }

    /**
     * @param done the done steps of this board, in the order they come
     */
    static SawnBoard of(PlannedBoard board, List<SequenceStep> done) {
        SawnBoard state = new SawnBoard(board, DoneCuts.of(board, done));
        Area whole = DoneCuts.whole(board);
        if (state.sawn.isEmpty()) {
            // Nothing is sawn, so nothing is finished, not even a part that is a board as it comes.
            state.blocks.add(new Block(whole, board.layout().cuts()));
        } else {
            state.walk(board.layout().cuts(), whole);
        }
        return state;
    }

    PlannedBoard board() {
        return board;
    }

    boolean isUntouched() {
        return sawn.isEmpty();
    }

    /** Pieces that are cut free. */
    List<PlacedPiece> finished() {
        return finished;
    }

    /** What is left, from the start end outwards. */
    List<Block> blocks() {
        return blocks;
    }

    private void walk(CutNode node, Area area) {
        if (area.isEmpty()) {
            return;
        }
        if (node instanceof CutNode.PartLeaf leaf) {
            PlacedPiece piece = DoneCuts.placed(board, leaf.part(), area);
            if (piece != null) {
                finished.add(piece);
            }
        } else if (node == CutNode.RestLeaf.OFFCUT) {
            blocks.add(new Block(area, node));
        } else if (node instanceof CutNode.Cuts cuts) {
            cuts(cuts, area);
        }
    }

    private void cuts(CutNode.Cuts node, Area area) {
        int start = 0;
        for (int i = 0; i <= node.slots().size(); i++) {
            if (i == node.slots().size() || isSawn(area, node.cut(), i)) {
                Area stretch = DoneCuts.stretch(node, area, start, i);
                if (start == i) {
                    walk(node.pieces().get(i), stretch);
                } else if (!stretch.isEmpty()) {
                    blocks.add(new Block(
                            stretch,
                            new CutNode.Cuts(
                                    node.cut(),
                                    node.slots().subList(start, i),
                                    node.pieces().subList(start, i + 1))));
                }
                start = i + 1;
            }
        }
    }

    private boolean isSawn(Area area, Direction cut, int slot) {
        return sawn.contains(new DoneCuts.Sawn(area, cut, slot));
    }
}
