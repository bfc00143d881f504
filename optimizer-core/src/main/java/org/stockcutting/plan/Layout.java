package org.stockcutting.plan;

import java.util.List;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.PlacedPiece;

/**
 * How one board, or several equal ones, are cut.
 *
 * @param stock id of the stock
 * @param repeat how many boards are cut this way
 * @param length raw length of the board
 * @param width raw width
 * @param thickness raw thickness
 * @param pieces placed pieces, by x then y
 * @param cuts the cut tree
 * @param offcuts what is left, by x then y
 */
public record Layout(
        String stock,
        int repeat,
        Length length,
        Length width,
        Length thickness,
        List<PlacedPiece> pieces,
        CutNode cuts,
        List<LeftOver> offcuts) {

    public Layout {
        pieces = List.copyOf(pieces);
        offcuts = List.copyOf(offcuts);
    }

    /**
     * A rectangle that is neither part, trim nor saw dust.
     *
     * @param x start along the length, raw
     * @param y start across, raw
     * @param length extent along x, up to the raw end where nothing was trimmed
     * @param width extent along y
     * @param keep true if a keep rule of the shop holds it worth keeping
     */
    public record LeftOver(Length x, Length y, Length length, Length width, boolean keep) {}
}
