package org.stockcutting.mishap;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SawCut;

/**
 * Which slots of one board's cut tree are sawn. A step says where its slot lies in the board's raw coordinates and what wood was on the
 * saw, so it is the slot of that direction and place whose node is as wide as that wood. The one place that knows how steps and slots
 * belong together.
 */
final class DoneCuts {

    /** Slot number {@code slot} of the node that divides {@code area}. */
    record Sawn(Area area, Direction cut, int slot) {}

    private final Set<Sawn> sawn = new HashSet<>();

    static Area whole(PlannedBoard board) {
        return new Area(
                Length.ZERO,
                Length.ZERO,
                board.layout().length(),
                board.layout().width());
    }

    /**
     * The slots that are sawn.
     *
     * @param done the done steps of this board
     */
    static Set<Sawn> of(PlannedBoard board, List<SequenceStep> done) {
        DoneCuts cuts = new DoneCuts();
        for (SequenceStep step : done) {
            SawCut cut = step.cut();
            // Without a place behind the slot a piece that is whole already is brought to size.
            if (cut != null && cut.to() != null) {
                cuts.find(board.layout().cuts(), whole(board), cut);
            }
        }
        return cuts.sawn;
    }

    private void find(CutNode node, Area area, SawCut cut) {
        if (!(node instanceof CutNode.Cuts cuts)) {
            return;
        }
        boolean here = cuts.cut() == cut.direction() && isAsWide(area, cut);
        for (int i = 0; i < cuts.slots().size() && here; i++) {
            if (cuts.slots().get(i).from().equals(cut.reading())
                    && cuts.slots().get(i).to().equals(cut.to())) {
                sawn.add(new Sawn(area, cuts.cut(), i));
                return;
            }
        }
        for (int i = 0; i < cuts.pieces().size(); i++) {
            find(cuts.pieces().get(i), piece(cuts, area, i), cut);
        }
    }

    /** True if the node's area has the wood's extent across the cut. */
    private static boolean isAsWide(Area area, SawCut cut) {
        Direction other = cut.direction() == Direction.CROSSCUT ? Direction.RIP : Direction.CROSSCUT;
        SequenceStep.Wood on = cut.on();
        boolean across = other == Direction.CROSSCUT;
        Length from = across ? on.x() : on.y();
        Length extent = across ? on.length() : on.width();
        return area.from(other).equals(from) && area.to(other).equals(from.plus(extent));
    }

    static @Nullable PlacedPiece placed(PlannedBoard board, String part, Area area) {
        for (PlacedPiece piece : board.layout().pieces()) {
            if (piece.part().equals(part)
                    && piece.x().equals(area.x0())
                    && piece.y().equals(area.y0())) {
                return piece;
            }
        }
        return null;
    }

    /** What becomes of piece i of a node that divides this area. */
    static Area piece(CutNode.Cuts node, Area area, int i) {
        return stretch(node, area, i, i);
    }

    /** From the start of piece i to the end of piece j, the slots between them not sawn. */
    static Area stretch(CutNode.Cuts node, Area area, int i, int j) {
        Length from = i == 0 ? area.from(node.cut()) : node.slots().get(i - 1).to();
        Length to = j == node.slots().size()
                ? area.to(node.cut())
                : node.slots().get(j).from();
        return area.between(node.cut(), from, to);
    }
}
