package org.stockcutting.draw;

import java.util.List;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;

/**
 * How large a drawing is and how its pieces are lettered.
 *
 * @param width width of the drawing in user units
 * @param left room left of the board for the readings from the edge
 * @param head room above the board
 * @param drawnLength greatest length at which a board is drawn
 * @param sheetHeight greatest height of a sheet
 * @param boardLeast least height of a board
 * @param boardMost greatest height of a board
 * @param lettering what stands on the pieces
 * @param fonts sizes tried for the lettering, largest first
 * @param readings size of the tape readings
 * @param rows most rows of readings below the board
 */
record Medium(
        int width,
        double left,
        double head,
        double drawnLength,
        double sheetHeight,
        double boardLeast,
        double boardMost,
        Lettering lettering,
        List<Integer> fonts,
        int readings,
        int rows) {

    Medium {
        fonts = List.copyOf(fonts);
    }

    /** What stands on the pieces. */
    enum Lettering {
        /** Name, number and size; a piece too small for them has a key into the legend. */
        NAMES,
        /** The mark to chalk, name, number and size, or as much of it as fits; the mark alone where nothing else does. */
        MARKS_AND_NAMES,
        /** The mark, with the length where there is room. */
        MARKS
    }

    /** A drawing that stands by itself, in units of 1/96 in. */
    static final Medium SCREEN =
            new Medium(1060, 84, 76, 940, 620, 62, 280, Lettering.NAMES, List.of(Pen.LARGE, Pen.SMALL), Pen.SMALL, 3);

    /** A picture on a printed page, in points (1/72 in), at sizes that can be read at arm's length. */
    static Medium page(double width, double height, Layout layout, PrintedLengths print) {
        double left = left(layout, print, Pen.LARGE);
        double head = 26;
        double room = height - head - below(Pen.LARGE, 3);
        return new Medium(
                (int) width,
                left,
                head,
                width - left - 30,
                room,
                Math.min(112, room),
                Math.min(230, room),
                Lettering.MARKS_AND_NAMES,
                List.of(24, 18, Pen.LARGE, Pen.SMALL),
                Pen.LARGE,
                3);
    }

    /**
     * A small picture, several a page, in points.
     *
     * @param keysAbove true if room is wanted above the board for the marks of pieces that are too small to carry them
     */
    static Medium compact(double width, double height, Layout layout, PrintedLengths print, boolean keysAbove) {
        double left = left(layout, print, Pen.TINY);
        double head = keysAbove ? 21 : 8;
        double room = height - head - below(Pen.TINY, 2);
        return new Medium(
                (int) width,
                left,
                head,
                width - left - 16,
                room,
                Math.min(46, room),
                Math.min(60, room),
                Lettering.MARKS,
                List.of(18, Pen.LARGE, Pen.SMALL, Pen.TINY),
                Pen.TINY,
                2);
    }

    /** Room left of a board for its widest reading from the edge. */
    private static double left(Layout layout, PrintedLengths print, int size) {
        double widest = CutLines.of(layout).readings(Direction.RIP).stream()
                .mapToDouble(reading -> Pen.width(print.position(reading), size))
                .max()
                .orElse(0);
        return Math.max(2 * size, widest + Readings.TICK + 6);
    }

    /** Room below a board for a full set of readings. */
    private static double below(int size, int rows) {
        return rows * Pen.lineHeight(size) + Readings.TICK + 4;
    }
}
