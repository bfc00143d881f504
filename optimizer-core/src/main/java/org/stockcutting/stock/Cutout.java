package org.stockcutting.stock;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * The wood of a rectangle that is cut out of a board whose far edge may slant. Never more than there is: where the slant begins inside
 * the rectangle, the straight line between its two ends is taken.
 *
 * @param width width at the start of the rectangle, 0 or less where nothing is there
 * @param widthEnd width at its end, 0 or less where nothing is there
 * @param slants true if the far edge is the slanting edge of the board
 */
public record Cutout(Length width, Length widthEnd, boolean slants) {

    /** The wood between these corners, in raw coordinates. */
    public static Cutout of(StockItem board, Length x0, Length y0, Length x1, Length y1) {
        Length end = board.condition().widthAt(x1, board).min(y1);
        Length start = board.condition().widthAt(x0, board).min(y1);
        return new Cutout(start.minus(y0), end.minus(y0), end.isLessThan(y1));
    }

    /** How true it is: bow and crook by its share of the board's length. */
    public Condition condition(StockItem board, Length x0, Length y0, Length x1) {
        Condition whole = board.condition();
        Length length = x1.minus(x0);
        @Nullable Boolean straight = y0.isZero() ? whole.straightEdge() : null;
        return new Condition(
                whole.bowOf(length, board.length()),
                whole.crookOf(length, board.length()),
                slants ? widthEnd : null,
                straight);
    }
}
