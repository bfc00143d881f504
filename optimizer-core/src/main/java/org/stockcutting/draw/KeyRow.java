package org.stockcutting.draw;

import java.util.ArrayList;
import java.util.List;

/**
 * Keys of pieces too small for any text, in a row above the board, each with a line down to its piece.
 *
 * @param shown keys for which there is room
 * @param left keys for which there is none, without those that the shown neighbour with the same key speaks for
 */
record KeyRow(List<Key> shown, List<Key> left) {

    private static final double GAP = 3;

    /**
     * A key and the piece it belongs to.
     *
     * @param text the key
     * @param reading where the piece begins, as printed
     * @param x middle of the piece
     * @param top upper edge of the piece
     */
    record Key(String text, String reading, double x, double top) {}

    static KeyRow of(List<Key> keys) {
        List<Key> shown = new ArrayList<>();
        List<Key> left = new ArrayList<>();
        double taken = Double.NEGATIVE_INFINITY;
        String before = "";
        for (Key key : keys) {
            double half = Pen.width(key.text(), Pen.SMALL) / 2;
            if (key.x() - half >= taken) {
                taken = key.x() + half + GAP;
                shown.add(key);
            } else if (!key.text().equals(before)) {
                left.add(key);
            }
            before = key.text();
        }
        return new KeyRow(shown, left);
    }

    void draw(Frame frame, Pen pen) {
        double base = frame.top() - 9;
        for (Key key : shown) {
            pen.text(key.text(), key.x() - Pen.width(key.text(), Pen.SMALL) / 2, base, Pen.SMALL);
            pen.line(key.x(), base + 2, key.x(), key.top() + 3, 0.6f);
        }
    }
}
