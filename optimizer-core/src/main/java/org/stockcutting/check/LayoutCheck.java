package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.job.KeepRule;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/** One layout: the board it is cut from, its pieces, its tree and what is left. */
final class LayoutCheck {

    private final Facts facts;
    private final Inspection inspection;

    LayoutCheck(Facts facts, Inspection inspection) {
        this.facts = facts;
        this.inspection = inspection;
    }

    /** What was found on one layout whose stock is known. */
    record Checked(int index, Layout layout, Board board, Sawn sawn, boolean whole) {

        BigInteger volume(BigInteger area) {
            return area.multiply(BigInteger.valueOf(board.thickness())).multiply(BigInteger.valueOf(layout.repeat()));
        }
    }

    /** Empty where the stock is unknown or the tree cannot be followed. */
    List<Checked> check(List<Layout> layouts) {
        List<Checked> checked = new ArrayList<>();
        for (int i = 0; i < layouts.size(); i++) {
            Layout layout = layouts.get(i);
            Board board = facts.boards().get(layout.stock());
            if (board == null) {
                inspection.report(
                        Cause.UNKNOWN_STOCK,
                        "/layouts/" + i + "/stock",
                        "the job has no stock \"" + layout.stock() + "\"");
            } else {
                checked.add(layout(i, layout, board));
            }
        }
        merged(layouts);
        return checked;
    }

    private Checked layout(int index, Layout layout, Board board) {
        String at = "/layouts/" + index;
        header(layout, board, at);
        PieceCheck pieces = new PieceCheck(facts, board, inspection);
        List<Rect> rects = new ArrayList<>();
        for (int p = 0; p < layout.pieces().size(); p++) {
            pieces.check(layout.pieces().get(p), at + "/pieces/" + p);
            rects.add(Rect.of(layout.pieces().get(p)));
        }
        Spacing.check(facts, rects, inspection, at + "/pieces");
        int before = inspection.size();
        Sawn sawn = TreeWalk.walk(facts, board, layout.cuts(), inspection, at + "/cuts");
        leaves(layout, sawn, at);
        boolean whole = inspection.size() == before;
        if (whole) {
            LimitCheck.check(facts, board, layout.cuts(), inspection, at + "/cuts");
            CrookCheck.check(board, layout.cuts(), inspection, at + "/cuts");
        }
        leftOvers(layout, board, sawn, at);
        return new Checked(index, layout, board, sawn, whole);
    }

    private void header(Layout layout, Board board, String at) {
        StockItem item = board.item();
        inspection.require(
                layout.length().equals(item.length())
                        && layout.width().equals(item.width())
                        && layout.thickness().equals(item.thickness()),
                Cause.STOCK_SIZE,
                at,
                "says " + layout.length() + " x " + layout.width() + " x " + layout.thickness() + ", " + item.id()
                        + " is " + item.length() + " x " + item.width() + " x " + item.thickness());
        inspection.require(
                layout.repeat() >= 1, Cause.COUNT, at + "/repeat", "repeat is at least 1, got " + layout.repeat());
        inspection.require(
                !board.barred(),
                Cause.CAR_LENGTH,
                at,
                item.id() + " is " + item.length() + " long, longer than the car takes");
    }

    private void leaves(Layout layout, Sawn sawn, String at) {
        Map<Sawn.Leaf, Integer> open = new HashMap<>();
        for (Sawn.Leaf leaf : sawn.parts()) {
            open.merge(leaf, 1, Integer::sum);
        }
        for (int p = 0; p < layout.pieces().size(); p++) {
            PlacedPiece piece = layout.pieces().get(p);
            Sawn.Leaf leaf = new Sawn.Leaf(piece.part(), Rect.of(piece));
            inspection.require(
                    open.merge(leaf, -1, Integer::sum) >= 0,
                    Cause.TREE,
                    at + "/pieces/" + p,
                    "the cut tree frees no " + piece.part() + " at "
                            + leaf.rect().text());
        }
        for (Sawn.Leaf leaf : sawn.parts()) {
            if (open.getOrDefault(leaf, 0) > 0) {
                open.merge(leaf, -1, Integer::sum);
                inspection.report(
                        Cause.TREE,
                        at + "/cuts",
                        "the cut tree frees a " + leaf.part() + " at "
                                + leaf.rect().text() + " that is not among the pieces");
            }
        }
    }

    private void leftOvers(Layout layout, Board board, Sawn sawn, String at) {
        List<Rect> listed = new ArrayList<>();
        for (int o = 0; o < layout.offcuts().size(); o++) {
            Layout.LeftOver left = layout.offcuts().get(o);
            Rect rect = rect(left);
            listed.add(rect);
            boolean keep = keeps(board, rect);
            inspection.require(
                    keep == left.keep(),
                    Cause.OFFCUT,
                    at + "/offcuts/" + o + "/keep",
                    keep ? "is worth keeping by the shop's rules" : "is not worth keeping by the shop's rules");
        }
        List<Rect> sawnOff = new ArrayList<>(sawn.offcuts());
        inspection.require(
                sorted(listed).equals(sorted(sawnOff)),
                Cause.OFFCUT,
                at + "/offcuts",
                "the listed offcuts are not the ones that the cut tree leaves");
    }

    static Rect rect(Layout.LeftOver left) {
        return Rect.at(left.x(), left.y(), left.length(), left.width());
    }

    private boolean keeps(Board board, Rect rect) {
        for (KeepRule rule : facts.job().shop().keepOffcuts()) {
            if (rule.form() == board.item().form()
                    && rect.length() >= rule.length().nanometres()
                    && board.evenness().woodAt(rect.x1(), rect.y0(), rect.y1())
                            >= rule.width().nanometres()) {
                return true;
            }
        }
        return false;
    }

    private static List<String> sorted(List<Rect> rects) {
        List<String> texts = new ArrayList<>();
        rects.forEach(rect -> texts.add(rect.toString()));
        Collections.sort(texts);
        return texts;
    }

    /** Equal when stock and all rectangles by part are equal. */
    private void merged(List<Layout> layouts) {
        Map<String, Integer> seen = new HashMap<>();
        for (int i = 0; i < layouts.size(); i++) {
            List<String> shape = new ArrayList<>();
            for (PlacedPiece piece : layouts.get(i).pieces()) {
                shape.add(piece.part() + "@" + Rect.of(piece));
            }
            Collections.sort(shape);
            Integer earlier = seen.putIfAbsent(layouts.get(i).stock() + shape, i);
            if (earlier != null) {
                inspection.report(
                        Cause.LAYOUTS_NOT_MERGED,
                        "/layouts/" + i,
                        "is the same as layout " + earlier + ": raise its repeat instead");
            }
        }
    }
}
