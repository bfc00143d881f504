package org.stockcutting.draw;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The largest way in which a piece's name and size fit into its rectangle.
 *
 * @param lines lines of text
 * @param size font size
 * @param upwards true if the text reads from bottom to top
 */
record PieceLabel(List<String> lines, int size, boolean upwards) {

    private static final double MARGIN = 2;

    /** The best fit, or null if nothing fits. */
    static @Nullable PieceLabel fit(String name, String size, Rectangle2D box) {
        return fit(List.of(List.of(name, size), List.of(name + "  " + size)), Medium.SCREEN.fonts(), box);
    }

    /** The first of the texts that fits at the largest font possible, or null if nothing fits. */
    private static @Nullable PieceLabel fit(List<List<String>> texts, List<Integer> fonts, Rectangle2D box) {
        for (int font : fonts) {
            for (boolean upwards : new boolean[] {false, true}) {
                for (List<String> lines : texts) {
                    if (fits(lines, font, upwards, box)) {
                        return new PieceLabel(lines, font, upwards);
                    }
                }
            }
        }
        return null;
    }

    /** The first of the texts that fits upright at the largest font possible, else reading upwards, or null if nothing fits. */
    static @Nullable PieceLabel upright(List<List<String>> texts, List<Integer> fonts, Rectangle2D box) {
        for (boolean upwards : new boolean[] {false, true}) {
            for (int font : fonts) {
                for (List<String> lines : texts) {
                    if (fits(lines, font, upwards, box)) {
                        return new PieceLabel(lines, font, upwards);
                    }
                }
            }
        }
        return null;
    }

    /** The key of a piece that is too small for its name, or null if even that does not fit. */
    static @Nullable PieceLabel key(String key, List<Integer> fonts, Rectangle2D box) {
        return fit(List.of(List.of(key)), fonts, box);
    }

    private static boolean fits(List<String> lines, int size, boolean upwards, Rectangle2D box) {
        double wide = lines.stream().mapToDouble(t -> Pen.width(t, size)).max().orElse(0) + 2 * MARGIN;
        double high = Pen.lineHeight(size) * lines.size() + 1;
        double roomX = upwards ? box.getHeight() : box.getWidth();
        double roomY = upwards ? box.getWidth() : box.getHeight();
        return wide <= roomX && high <= roomY;
    }
}
