package org.stockcutting.stock;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * How true a measured board is.
 *
 * <p>A piece of length l from a board of length L has a share of (l / L)<sup>2</sup> of the board's bow and crook, as the sagitta of a
 * shallow arc has (common practice, no source). All figures are rounded up to the nanometre, so never to the optimistic side.
 *
 * @param bow how far the face is hollow along the board, 0 or more; what is planed flat loses its share in thickness
 * @param crook how far the edge is hollow along the board, 0 or more; what is ripped loses its share in width
 * @param widthEnd width at the far end, at most the width at the start, or null where it is the same; y = 0 is then the straight edge
 * @param straightEdge true if the edge at y = 0 is good as it is, false if it is not, null where nothing was said
 */
public record Condition(
        Length bow,
        Length crook,
        @Nullable Length widthEnd,
        @Nullable Boolean straightEdge) {

    /** Straight and of one width. */
    public static final Condition TRUE = new Condition(Length.ZERO, Length.ZERO, null, null);

    /** True if neither taper nor crook take anything from the width. */
    public boolean isFullWidth() {
        return crook.isZero() && widthEnd == null;
    }

    /** What a piece so long loses in thickness when it is planed flat. */
    public Length bowOf(Length piece, Length board) {
        return share(bow, piece, board);
    }

    /** What a piece so long loses in width when its edge is made straight. */
    public Length crookOf(Length piece, Length board) {
        return share(crook, piece, board);
    }

    /** How wide the board is so far from its start, rounded down. */
    public Length widthAt(Length x, StockItem board) {
        if (widthEnd == null) {
            return board.width();
        }
        BigInteger lost = big(board.width().minus(widthEnd)).multiply(big(x));
        return board.width().minus(upwards(lost, big(board.length())));
    }

    /** How far from its start the board is at least so wide, rounded down; less than 0 where it is so wide nowhere. */
    public Length reach(Length width, StockItem board) {
        if (widthEnd == null || !widthEnd.isLessThan(board.width())) {
            return width.isMoreThan(board.width()) ? Length.ofNanometres(-1) : board.length();
        }
        BigInteger over = big(board.width().minus(width)).multiply(big(board.length()));
        BigInteger[] parts = over.divideAndRemainder(big(board.width().minus(widthEnd)));
        long down = parts[0].longValueExact() - (parts[1].signum() < 0 ? 1 : 0);
        return Length.ofNanometres(down).min(board.length());
    }

    private static Length share(Length all, Length piece, Length board) {
        if (all.isZero()) {
            return Length.ZERO;
        }
        return upwards(
                big(all).multiply(big(piece.min(board)).pow(2)), big(board).pow(2));
    }

    private static Length upwards(BigInteger dividend, BigInteger divisor) {
        BigInteger up = dividend.add(divisor).subtract(BigInteger.ONE).divide(divisor);
        return Length.ofNanometres(up.longValueExact());
    }

    private static BigInteger big(Length length) {
        return BigInteger.valueOf(length.nanometres());
    }
}
