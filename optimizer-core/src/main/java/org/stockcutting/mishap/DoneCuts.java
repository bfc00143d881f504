package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.SequenceStep;

/**
 * Which slots of one board's cut tree are sawn: the steps of the board are followed in the order they come, each taking the cut that
 * can be made by then and agrees with it best. The one place that knows how steps and slots belong together.
 */
final class DoneCuts {

    private static final Set<String> CROSSCUTS = Set.of("crosscut", "rough-crosscut");
    private static final String TRIM = "trim";

    /** Slot number {@code slot} of the node that divides {@code area}. */
    record Sawn(Area area, Direction cut, int slot) {}

    private record Ready(CutNode.Cuts node, Area area, int slot) {}

    private final PlannedBoard board;
    private final List<Ready> ready = new ArrayList<>();
    private final Set<Sawn> sawn = new HashSet<>();

    private DoneCuts(PlannedBoard board) {
        this.board = board;
        free(board.layout().cuts(), whole(board));
    }

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
     * @param done the done steps of this board, in the order they come
     */
    static Set<Sawn> of(PlannedBoard board, List<SequenceStep> done) {
        DoneCuts cuts = new DoneCuts(board);
        done.stream().filter(step -> isCut(step.kind())).forEach(cuts::follow);
        return cuts.sawn;
    }

    private static boolean isCut(String kind) {
        return CROSSCUTS.contains(kind) || kind.equals(Direction.RIP.word()) || kind.equals(TRIM);
    }

    private void follow(SequenceStep step) {
        Ready best = null;
        int most = -1;
        for (Ready cut : ready) {
            int agreement = agreement(cut, step);
            if (agreement > most) {
                best = cut;
                most = agreement;
            }
        }
        if (best == null) {
            return;
        }
        ready.remove(best);
        CutNode.Cuts node = best.node();
        sawn.add(new Sawn(best.area(), node.cut(), best.slot()));
        free(node.pieces().get(best.slot()), piece(node, best.area(), best.slot()));
        if (best.slot() + 1 < node.slots().size()) {
            ready.add(new Ready(node, best.area(), best.slot() + 1));
        } else {
            free(node.pieces().get(best.slot() + 1), piece(node, best.area(), best.slot() + 1));
        }
    }

    /** The direction counts most, then the reading, then the part that comes free. */
    private int agreement(Ready cut, SequenceStep step) {
        Direction direction = cut.node().cut();
        boolean sameWay = step.kind().equals(TRIM)
                || (direction == Direction.CROSSCUT
                        ? CROSSCUTS.contains(step.kind())
                        : step.kind().equals(Direction.RIP.word()));
        boolean sameReading = cut.node().slots().get(cut.slot()).from().equals(step.reading());
        return (sameWay ? 4 : 0) + (sameReading ? 2 : 0) + (freesSamePart(cut, step) ? 1 : 0);
    }

    private boolean freesSamePart(Ready cut, SequenceStep step) {
        return step.part() != null
                && (isPart(cut, cut.slot(), step)
                        || (cut.slot() + 1 == cut.node().slots().size() && isPart(cut, cut.slot() + 1, step)));
    }

    private boolean isPart(Ready cut, int index, SequenceStep step) {
        CutNode node = cut.node().pieces().get(index);
        if (!(node instanceof CutNode.PartLeaf leaf) || !leaf.part().equals(step.part())) {
            return false;
        }
        PlacedPiece placed = placed(board, leaf.part(), piece(cut.node(), cut.area(), index));
        return placed != null
                && (step.number() == null
                        || step.number().equals(placed.numbers().get(board.copy())));
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

    private void free(CutNode node, Area area) {
        if (node instanceof CutNode.Cuts cuts) {
            if (cuts.slots().isEmpty()) {
                free(cuts.pieces().get(0), area);
            } else {
                ready.add(new Ready(cuts, area, 0));
            }
        }
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
