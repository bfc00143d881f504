package org.stockcutting.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;

/**
 * The cut tree of a layout laid out flat: every cut with the rectangle it runs through, and every trimmed end or edge.
 *
 * @param lines cuts, outer ones first
 * @param trims what trimming removes, its slot not included
 */
public record CutLines(List<Line> lines, List<Box> trims) {

    public CutLines {
        lines = List.copyOf(lines);
        trims = List.copyOf(trims);
    }

    /** A rectangle in raw board coordinates. */
    public record Box(Length x, Length y, Length extentX, Length extentY) {}

    /**
     * One cut.
     *
     * @param cut direction
     * @param slot the whole strip that becomes dust
     * @param reading where the tape is read for this cut: the side of the slot that a part lies on
     */
    public record Line(Direction cut, Box slot, Length reading) {}

    /** Lays out the tree of a layout. */
    public static CutLines of(Layout layout) {
        List<Line> lines = new ArrayList<>();
        List<Box> trims = new ArrayList<>();
        walk(layout.cuts(), new Box(Length.ZERO, Length.ZERO, layout.length(), layout.width()), lines, trims);
        return new CutLines(lines, trims);
    }

    /** All different readings of one direction, ascending. */
    public List<Length> readings(Direction direction) {
        TreeSet<Length> readings = new TreeSet<>();
        for (Line line : lines) {
            if (line.cut() == direction) {
                readings.add(line.reading());
            }
        }
        return List.copyOf(readings);
    }

    private static void walk(CutNode node, Box box, List<Line> lines, List<Box> trims) {
        if (node == CutNode.RestLeaf.TRIM) {
            trims.add(box);
        } else if (node instanceof CutNode.Cuts cuts) {
            walkCuts(cuts, box, lines, trims);
        }
    }

    private static void walkCuts(CutNode.Cuts cuts, Box box, List<Line> lines, List<Box> trims) {
        boolean across = cuts.cut() == Direction.CROSSCUT;
        Length from = across ? box.x() : box.y();
        Length end = from.plus(across ? box.extentX() : box.extentY());
        for (int i = 0; i < cuts.pieces().size(); i++) {
            boolean last = i == cuts.slots().size();
            Length to = last ? end : cuts.slots().get(i).from();
            if (!last) {
                CutNode.Slot slot = cuts.slots().get(i);
                boolean partBefore = hasPart(cuts.pieces().get(i));
                boolean partBehind = hasPart(cuts.pieces().get(i + 1));
                Length reading = !partBefore && partBehind ? slot.to() : slot.from();
                lines.add(new Line(cuts.cut(), part(box, across, slot.from(), slot.to()), reading));
            }
            walk(cuts.pieces().get(i), part(box, across, from, to), lines, trims);
            from = last ? end : cuts.slots().get(i).to();
        }
    }

    private static Box part(Box box, boolean across, Length from, Length to) {
        Length extent = to.minus(from);
        return across ? new Box(from, box.y(), extent, box.extentY()) : new Box(box.x(), from, box.extentX(), extent);
    }

    private static boolean hasPart(CutNode node) {
        if (node instanceof CutNode.Cuts cuts) {
            return cuts.pieces().stream().anyMatch(CutLines::hasPart);
        }
        return node instanceof CutNode.PartLeaf;
    }
}
