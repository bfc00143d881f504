package org.stockcutting.draw;

import java.awt.Graphics2D;

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

    /** Paints with the top left corner of the paper at the graphics' origin. */
    public void paint(Graphics2D graphics) {
        ink.paint(graphics);
    }
}
