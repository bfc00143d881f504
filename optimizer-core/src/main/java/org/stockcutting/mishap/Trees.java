package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Cutout;
import org.stockcutting.stock.StockItem;

/** Moves cut trees from one piece of wood to another, and changes their leaves. */
public final class Trees {

    private Trees() {}

    /** The tree with every position moved by this much. */
    public static CutNode moved(CutNode node, Length dx, Length dy) {
        if (!(node instanceof CutNode.Cuts cuts)) {
            return node;
        }
        Length shift = cuts.cut() == Direction.CROSSCUT ? dx : dy;
        List<CutNode.Slot> slots = cuts.slots().stream()
                .map(slot -> new CutNode.Slot(slot.from().plus(shift), slot.to().plus(shift)))
                .toList();
        return new CutNode.Cuts(
                cuts.cut(),
                slots,
                cuts.pieces().stream().map(piece -> moved(piece, dx, dy)).toList());
    }

    /** The piece at a place moved by this much. */
    public static PlacedPiece moved(PlacedPiece piece, Length dx, Length dy) {
        return new PlacedPiece(
                piece.part(),
                piece.numbers(),
                piece.members(),
                piece.x().plus(dx),
                piece.y().plus(dy),
                piece.length(),
                piece.width(),
                piece.turned());
    }

    /** The tree of a layout with other leaves: the function sees each leaf and its place, and says what stands there instead. */
    public static CutNode withLeaves(Layout layout, BiFunction<CutNode, Layout.LeftOver, CutNode> leaves) {
        return withLeaves(layout.cuts(), whole(layout), leaves);
    }

    private static CutNode withLeaves(CutNode node, Area area, BiFunction<CutNode, Layout.LeftOver, CutNode> leaves) {
        if (!(node instanceof CutNode.Cuts cuts)) {
            return leaves.apply(node, place(area, false));
        }
        List<CutNode> pieces = new ArrayList<>();
        for (int i = 0; i < cuts.pieces().size(); i++) {
            pieces.add(withLeaves(cuts.pieces().get(i), DoneCuts.piece(cuts, area, i), leaves));
        }
        return new CutNode.Cuts(cuts.cut(), cuts.slots(), pieces);
    }

    /** A layout made of pieces and a tree: what is left over follows from the tree, what is kept from the shop's rules. */
    public static Layout layout(Job job, StockItem stock, Layout board, List<PlacedPiece> pieces, CutNode cuts) {
        List<Layout.LeftOver> offcuts = new ArrayList<>();
        eachLeaf(cuts, whole(board), (leaf, area) -> {
            if (leaf == CutNode.RestLeaf.OFFCUT) {
                Length wood = Cutout.of(stock, area.x0(), area.y0(), area.x1(), area.y1())
                        .widthEnd();
                boolean keep = job.shop().keepOffcuts().stream()
                        .anyMatch(rule -> rule.keeps(stock.form(), area.length(), wood));
                offcuts.add(place(area, keep));
            }
        });
        offcuts.sort(Comparator.comparing(Layout.LeftOver::x).thenComparing(Layout.LeftOver::y));
        List<PlacedPiece> sorted = new ArrayList<>(pieces);
        sorted.sort(Comparator.comparing(PlacedPiece::x).thenComparing(PlacedPiece::y));
        return new Layout(
                board.stock(), board.repeat(), board.length(), board.width(), board.thickness(), sorted, cuts, offcuts);
    }

    private static void eachLeaf(CutNode node, Area area, BiConsumer<CutNode, Area> leaf) {
        if (node instanceof CutNode.Cuts cuts) {
            for (int i = 0; i < cuts.pieces().size(); i++) {
                eachLeaf(cuts.pieces().get(i), DoneCuts.piece(cuts, area, i), leaf);
            }
        } else {
            leaf.accept(node, area);
        }
    }

    private static Area whole(Layout layout) {
        return new Area(Length.ZERO, Length.ZERO, layout.length(), layout.width());
    }

    private static Layout.LeftOver place(Area area, boolean keep) {
        return new Layout.LeftOver(area.x0(), area.y0(), area.length(), area.width(), keep);
    }
}
