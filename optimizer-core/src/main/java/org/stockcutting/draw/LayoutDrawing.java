package org.stockcutting.draw;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.util.List;

/**
 * A drawing of known size, ready to be painted as often as wanted.
 *
 * @param width width of the paper in user units (1/96 in where one is wanted)
 * @param height height of the paper
 * @param ink what to paint
 */
public record LayoutDrawing(int width, int height, Ink ink) {

    /** Something that can be painted. */
    @FunctionalInterface
    public interface Ink {
        void paint(Graphics2D graphics);
    }

    /** Several drawings as one, each below the one before. */
    public static LayoutDrawing stacked(List<LayoutDrawing> drawings) {
        int width = drawings.stream().mapToInt(LayoutDrawing::width).max().orElse(1);
        int height = drawings.stream().mapToInt(LayoutDrawing::height).sum();
        return new LayoutDrawing(width, Math.max(1, height), graphics -> {
            AffineTransform before = graphics.getTransform();
            for (LayoutDrawing drawing : drawings) {
                drawing.paint(graphics);
                graphics.translate(0, drawing.height());
            }
            graphics.setTransform(before);
        });
    }

    /** Paints with the top left corner of the paper at the graphics' origin. */
    public void paint(Graphics2D graphics) {
        ink.paint(graphics);
    }
}
