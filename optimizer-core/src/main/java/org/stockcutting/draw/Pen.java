package org.stockcutting.draw;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** The few marks a drawing is made of. Black and greys only, so that every printer shows the same. */
final class Pen {

    static final int LARGE = 14;
    static final int SMALL = 11;
    static final int TINY = 9;
    /** For marks on small pictures only, where the alternative is no mark. */
    static final int LEAST = 8;

    private static final Color TRIM = new Color(0xC8, 0xC8, 0xC8);
    private static final Color HATCH = new Color(0x60, 0x60, 0x60);
    private static final Color SPARSE = new Color(0xA0, 0xA0, 0xA0);
    private static final Color FAINT = new Color(0x88, 0x88, 0x88);
    private static final double HATCH_STEP = 6;

    private final Graphics2D g;

    Pen(Graphics2D g) {
        this.g = g;
    }

    /** Fills the whole paper white. */
    void paper(int width, int height) {
        g.setColor(Color.WHITE);
        g.fill(new Rectangle2D.Double(0, 0, width, height));
    }

    void piece(Rectangle2D box) {
        fill(box, Color.WHITE);
        outline(box, 1.2f);
    }

    void offcut(Rectangle2D box, boolean keep) {
        fill(box, Color.WHITE);
        if (!keep) {
            g.setColor(SPARSE);
            g.setStroke(new BasicStroke(0.6f));
            slanted(box, HATCH_STEP * 1.5, true);
        }
        dashed(box.getMinX(), box.getMinY(), box.getMaxX(), box.getMinY(), keep ? 5f : 2f);
        dashed(box.getMinX(), box.getMaxY(), box.getMaxX(), box.getMaxY(), keep ? 5f : 2f);
    }

    void bare(Rectangle2D box) {
        fill(box, Color.WHITE);
    }

    void trim(Rectangle2D box) {
        fill(box, TRIM);
    }

    void outline(Rectangle2D box, float weight) {
        g.setColor(Color.BLACK);
        g.setStroke(new BasicStroke(weight));
        g.draw(box);
    }

    void line(double x1, double y1, double x2, double y2, float weight) {
        g.setColor(Color.BLACK);
        g.setStroke(new BasicStroke(weight, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        g.draw(new Line2D.Double(x1, y1, x2, y2));
    }

    /** A line that text may stand on. */
    void faint(double x1, double y1, double x2, double y2) {
        g.setColor(FAINT);
        g.setStroke(new BasicStroke(0.9f));
        g.draw(new Line2D.Double(x1, y1, x2, y2));
    }

    void dashed(double x1, double y1, double x2, double y2, float dash) {
        g.setColor(Color.BLACK);
        g.setStroke(new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10f, new float[] {dash, 3f}, 0f));
        g.draw(new Line2D.Double(x1, y1, x2, y2));
    }

    /** Slanted lines across a bad zone, crossed where it is unusable; each line is cut to the box by hand, so no clip is needed. */
    void hatch(Rectangle2D box, boolean dense) {
        g.setColor(HATCH);
        g.setStroke(new BasicStroke(1f));
        slanted(box, dense ? HATCH_STEP : HATCH_STEP * 2, false);
        if (dense) {
            slanted(box, HATCH_STEP, true);
        }
        g.draw(box);
    }

    /** Parallel lines at 45 degrees, rising or falling to the right. */
    private void slanted(Rectangle2D box, double step, boolean falling) {
        double height = box.getHeight();
        for (double c = step; c < box.getWidth() + height; c += step) {
            double x1 = Math.max(0, c - height);
            double x2 = Math.min(box.getWidth(), c);
            double y1 = falling ? height - (c - x1) : c - x1;
            double y2 = falling ? height - (c - x2) : c - x2;
            g.draw(new Line2D.Double(box.getMinX() + x1, box.getMinY() + y1, box.getMinX() + x2, box.getMinY() + y2));
        }
    }

    /** Text whose baseline starts at a point. */
    void text(String text, double x, double baseline, int size) {
        g.setColor(Color.BLACK);
        g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, size));
        g.drawString(SafeText.ordered(text), (float) x, (float) baseline);
    }

    /** Lines of text centred in a box, on white where something is drawn below, upright or reading upwards. */
    void centred(java.util.List<String> lines, Rectangle2D box, int size, boolean upwards, boolean onWhite) {
        AffineTransform before = g.getTransform();
        g.translate(box.getCenterX(), box.getCenterY());
        if (upwards) {
            g.rotate(-Math.PI / 2);
        }
        double step = lineHeight(size);
        double top = -step * lines.size() / 2;
        if (onWhite) {
            double wide = lines.stream().mapToDouble(t -> width(t, size)).max().orElse(0);
            fill(new Rectangle2D.Double(-wide / 2 - 2, top, wide + 4, step * lines.size()), Color.WHITE);
        }
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            text(line, -width(line, size) / 2, top + step * i + size * 0.95, size);
        }
        g.setTransform(before);
    }

    /** Room one line takes. */
    static double lineHeight(int size) {
        return size * 1.25;
    }

    /**
     * Room a text takes, estimated wide enough for common sans-serif faces. Estimated, not measured: the drawing must not depend on the
     * fonts of the machine that makes it.
     */
    static double width(String text, int size) {
        double ems = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (" .,'|!:;ijlI-()[]/".indexOf(c) >= 0) {
                ems += 0.37;
            } else if (c < 0x80) {
                ems += c >= 'A' && c <= 'Z' || "~@%mw#+=<>".indexOf(c) >= 0 ? 0.85 : 0.64;
            } else {
                ems += 1;
            }
        }
        return ems * size;
    }

    private void fill(Rectangle2D box, Color color) {
        g.setColor(color);
        g.fill(box);
    }
}
