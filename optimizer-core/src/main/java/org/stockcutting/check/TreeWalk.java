package org.stockcutting.check;

import java.util.List;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.CutNode.Cuts;
import org.stockcutting.pattern.CutNode.PartLeaf;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.CutNode.Slot;
import org.stockcutting.pattern.Direction;

/**
 * Follows a cut tree from the raw board to its leaves: every slot one kerf, edge to edge, within its rectangle, clear of metal, and
 * every leaf something that may be there. The saw's limits are left to {@link LimitCheck}.
 */
final class TreeWalk {

    private static final int DEEPEST = 500;

    private final Facts facts;
    private final Board board;
    private final Inspection inspection;
    private final String pointer;
    private final Sawn sawn = new Sawn();

    private TreeWalk(Facts facts, Board board, Inspection inspection, String pointer) {
        this.facts = facts;
        this.board = board;
        this.inspection = inspection;
        this.pointer = pointer;
    }

    static Sawn walk(Facts facts, Board board, CutNode root, Inspection inspection, String pointer) {
        TreeWalk walk = new TreeWalk(facts, board, inspection, pointer);
        walk.node(root, board.raw(), 0);
        return walk.sawn;
    }

    private void node(CutNode node, Rect rect, int depth) {
        if (depth > DEEPEST) {
            report(Cause.TREE, "the cut tree is deeper than " + DEEPEST + " cuts");
        } else if (node instanceof Cuts cuts) {
            cuts(cuts, rect, depth);
        } else if (node instanceof PartLeaf leaf) {
            require(!rect.isEmpty(), Cause.TREE, "nothing is left for " + leaf.part() + " at " + rect.text());
            sawn.part(leaf.part(), rect);
        } else if (node instanceof RestLeaf leaf) {
            rest(leaf, rect);
        }
    }

    private void rest(RestLeaf leaf, Rect rect) {
        switch (leaf) {
            case SLIVER -> require(rect.isEmpty(), Cause.TREE, "a sliver has an extent: " + rect.text());
            case OFFCUT -> {
                require(!rect.isEmpty(), Cause.TREE, "an offcut without extent is a sliver: " + rect.text());
                sawn.offcut(rect);
            }
            case TRIM -> {
                require(!rect.isEmpty(), Cause.TREE, "a trim without extent is a sliver: " + rect.text());
                require(!rect.overlaps(board.usable()), Cause.TREE, "trim takes usable wood: " + rect.text());
                sawn.trim(rect);
            }
        }
    }

    private void cuts(Cuts cuts, Rect rect, int depth) {
        boolean across = cuts.cut() == Direction.CROSSCUT;
        long at = across ? rect.x0() : rect.y0();
        long end = across ? rect.x1() : rect.y1();
        require(!cuts.slots().isEmpty(), Cause.TREE, "a node without a cut at " + rect.text());
        List<Slot> slots = cuts.slots();
        for (int i = 0; i < slots.size(); i++) {
            long from = slots.get(i).from().nanometres();
            long to = slots.get(i).to().nanometres();
            if (from < at || to < from || to > end) {
                report(Cause.TREE, "slot " + span(from, to) + " does not lie within " + span(at, end));
                return;
            }
            slotWidth(cuts, i, from, to, at, end, across);
            slot(part(rect, from, to, across), from, to, across);
            child(cuts.pieces().get(i), part(rect, at, from, across), depth);
            at = to;
        }
        child(cuts.pieces().get(slots.size()), part(rect, at, end, across), depth);
    }

    /** Only slivers may have no extent, and slivers none. */
    private void child(CutNode node, Rect rect, int depth) {
        if (rect.isEmpty() && node != RestLeaf.SLIVER) {
            report(Cause.TREE, "nothing is left at " + rect.text() + " but the tree goes on there");
        } else {
            node(node, rect, depth + 1);
        }
    }

    /** One kerf; less only where the saw runs out over an end, more only where two passes overlap. */
    private void slotWidth(Cuts cuts, int index, long from, long to, long at, long end, boolean across) {
        long kerf = across ? facts.crosscutKerf() : facts.ripKerf();
        long width = to - from;
        boolean first = index == 0 && from == at && cuts.pieces().get(0) == RestLeaf.SLIVER;
        boolean last =
                index == cuts.slots().size() - 1 && to == end && cuts.pieces().get(index + 1) == RestLeaf.SLIVER;
        boolean right = width == kerf || (width < kerf && (first || last)) || (width > kerf && width < 2 * kerf);
        require(
                right,
                Cause.KERF,
                "slot " + span(from, to) + " is " + Inspection.mm(width) + " wide; the kerf is " + Inspection.mm(kerf));
    }

    private void slot(Rect slot, long from, long to, boolean across) {
        for (Board.Bad bad : board.zones()) {
            if (bad.zone().metal() && bad.rect().overlaps(slot)) {
                report(
                        Cause.METAL_CUT,
                        "the cut " + slot.text() + " passes through metal at "
                                + bad.rect().text());
            }
        }
        if (isTrimSlot(board, from, to, across)) {
            sawn.trim(slot);
        } else {
            sawn.kerf(slot);
        }
    }

    /** A slot that lies outside what is usable only trims. */
    static boolean isTrimSlot(Board board, long from, long to, boolean across) {
        Rect usable = board.usable();
        long low = across ? usable.x0() : usable.y0();
        long high = across ? usable.x1() : usable.y1();
        Rect raw = board.raw();
        boolean start = low > 0 && to <= low;
        boolean end = high < (across ? raw.x1() : raw.y1()) && from >= high;
        return start || end;
    }

    static Rect part(Rect rect, long from, long to, boolean across) {
        return across ? new Rect(from, rect.y0(), to, rect.y1()) : new Rect(rect.x0(), from, rect.x1(), to);
    }

    private static String span(long from, long to) {
        return "[" + Inspection.mm(from) + ", " + Inspection.mm(to) + "]";
    }

    private void require(boolean right, Cause cause, String text) {
        inspection.require(right, cause, pointer, text);
    }

    private void report(Cause cause, String text) {
        inspection.report(cause, pointer, text);
    }
}
