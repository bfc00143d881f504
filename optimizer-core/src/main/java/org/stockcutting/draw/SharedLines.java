package org.stockcutting.draw;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.TaperedPair;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Taper;
import org.stockcutting.pattern.PlacedPiece;

/**
 * Where several parts lie in the piece that they share. Two tapered ones: the slot of the cut that parts them, and the straight edge that
 * each keeps from its reference end to where its taper begins; the first lies at the origin end and edge, the second head to foot beside it.
 * Mitred ones: both ends of each, the long edge of the first at the origin edge.
 */
final class SharedLines {

    /** Least extent of a piece on paper in which the lines can be told apart. */
    private static final double LEAST = 16;

    /** Lines in nanometres from the piece's origin end and edge, by part. */
    private final Map<String, List<Line2D>> lines = new HashMap<>();

    SharedLines(Job job) {
        for (Part part : job.parts()) {
            if (part.section() instanceof Section.Measured measured) {
                Ends ends = part.shaping().ends();
                if (ends != null) {
                    lines.put(part.id(), mitred(job, part, ends, measured));
                } else if (part.isNested()) {
                    tapered(job, part, measured);
                }
            }
        }
    }

    private void tapered(Job job, Part part, Section.Measured measured) {
        Length slot = job.shop().kerf().rip();
        TaperedPair pair = TaperedPair.of(part, slot);
        Taper taper = part.shaping().taper();
        Length begins = part.shaping().taperStart(part.length());
        if (pair == null || taper == null || begins == null) {
            return;
        }
        double length = part.length().nanometres();
        double top = measured.width().nanometres();
        double start = begins.nanometres();
        double foot = taper.foot().nanometres();
        double width = pair.width().nanometres();
        double kerf = slot.nanometres();
        double high = top + (top - foot) * start / (length - start);
        lines.put(
                part.id(),
                List.of(
                        new Line2D.Double(0, high, length, foot),
                        new Line2D.Double(0, high + kerf, length, foot + kerf),
                        new Line2D.Double(0, top, start, top),
                        new Line2D.Double(length - start, width - top, length, width - top)));
    }

    private static List<Line2D> mitred(Job job, Part part, Ends ends, Section.Measured measured) {
        double length = part.coreLength().nanometres();
        double width = measured.width().nanometres();
        double slope = ends.slope(measured.width()).nanometres();
        double pitch = BlankPlanner.pitch(job, part).nanometres();
        List<Line2D> both = new ArrayList<>();
        for (int i = 0; i < ends.stick(); i++) {
            boolean turned = ends.flip() && i % 2 == 1;
            double longEdge = turned ? width : 0;
            double from = i * pitch;
            both.add(new Line2D.Double(from, longEdge, from + slope, width - longEdge));
            both.add(new Line2D.Double(from + length, longEdge, from + length - slope, width - longEdge));
        }
        return both;
    }

    void draw(PlacedPiece piece, Rectangle2D box, Pen pen) {
        List<Line2D> own = lines.get(piece.part());
        if (own == null || Math.min(box.getWidth(), box.getHeight()) < LEAST) {
            return;
        }
        boolean turned = piece.turned();
        double perLength =
                (turned ? box.getHeight() : box.getWidth()) / piece.length().nanometres();
        double perWidth =
                (turned ? box.getWidth() : box.getHeight()) / piece.width().nanometres();
        for (Line2D line : own) {
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
