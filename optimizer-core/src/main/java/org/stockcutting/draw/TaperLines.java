package org.stockcutting.draw;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.blank.TaperedPair;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Taper;
import org.stockcutting.pattern.PlacedPiece;

/**
 * Where two tapered parts lie in the blank that they share: the slot of the cut that parts them, and the straight edge that each keeps from
 * its reference end to where its taper begins. The first lies at the blank's origin end and edge, the second head to foot beside it.
 */
final class TaperLines {

    /** Least extent of a piece on paper in which the lines can be told apart. */
    private static final double LEAST = 16;

    private final Map<String, Pair> pairs = new HashMap<>();

    /** Sizes in nanometres: of the parts, where their taper begins, of the blank without allowances, and the cut. */
    private record Pair(double length, double top, double start, double foot, double width, double kerf) {

        /** Slot first, the side of the first part before that of the second; then the straight edges of both. */
        List<Line2D> lines() {
            double high = top + (top - foot) * start / (length - start);
            return List.of(
                    new Line2D.Double(0, high, length, foot),
                    new Line2D.Double(0, high + kerf, length, foot + kerf),
                    new Line2D.Double(0, top, start, top),
                    new Line2D.Double(length - start, width - top, length, width - top));
        }
    }

    TaperLines(Job job) {
        Length kerf = job.shop().kerf().rip();
        for (Part part : job.parts()) {
            TaperedPair pair = part.isNested() ? TaperedPair.of(part, kerf) : null;
            Taper taper = part.shaping().taper();
            Length start = part.shaping().taperStart(part.length());
            if (pair != null && taper != null && start != null && part.section() instanceof Section.Measured measured) {
                pairs.put(
                        part.id(),
                        new Pair(
                                part.length().nanometres(),
                                measured.width().nanometres(),
                                start.nanometres(),
                                taper.foot().nanometres(),
                                pair.width().nanometres(),
                                kerf.nanometres()));
            }
        }
    }

    void draw(PlacedPiece piece, Rectangle2D box, Pen pen) {
        Pair pair = pairs.get(piece.part());
        if (pair == null || Math.min(box.getWidth(), box.getHeight()) < LEAST) {
            return;
        }
        boolean turned = piece.turned();
        double perLength =
                (turned ? box.getHeight() : box.getWidth()) / piece.length().nanometres();
        double perWidth =
                (turned ? box.getWidth() : box.getHeight()) / piece.width().nanometres();
        for (Line2D line : pair.lines()) {
            double along1 = line.getX1() * perLength;
            double along2 = line.getX2() * perLength;
            double across1 = line.getY1() * perWidth;
            double across2 = line.getY2() * perWidth;
            pen.faint(
                    box.getMinX() + (turned ? across1 : along1),
                    box.getMaxY() - (turned ? along1 : across1),
                    box.getMinX() + (turned ? across2 : along2),
                    box.getMaxY() - (turned ? along2 : across2));
        }
    }
}
