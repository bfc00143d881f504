package org.stockcutting.check;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.StockItem;

/**
 * Bow, crook and taper of a board, asked as exact inequalities over whole nanometres: both sides are multiplied by the square of the
 * board's length, so nothing is rounded.
 *
 * @param length length of the board
 * @param width its width at the start
 * @param widthEnd its width at the end
 * @param bow hollow of the face over the whole length
 * @param crook hollow of the edge over the whole length
 * @param goodEdge true if the edge where y is 0 needs no trim
 */
record Evenness(long length, long width, long widthEnd, long bow, long crook, boolean goodEdge) {

    static Evenness of(StockItem item) {
        Condition told = item.condition();
        @Nullable Length end = told.widthEnd();
        long width = item.width().nanometres();
        return new Evenness(
                item.length().nanometres(),
                width,
                end == null ? width : end.nanometres(),
                told.bow().nanometres(),
                told.crook().nanometres(),
                told.straightEdge() != null && told.straightEdge());
    }

    boolean isEven() {
        return crook == 0 && widthEnd == width;
    }

    boolean isTapered() {
        return widthEnd != width;
    }

    /** True if a stretch so long, this much thicker than it must become, can be planed flat. */
    boolean flattens(long over, long stretch) {
        return over >= 0 && square(bow, Math.min(stretch, length)).compareTo(square(over, length)) <= 0;
    }

    /** True if so much of the width is free for making an edge straight that is so long. */
    boolean straightens(long free, long stretch) {
        return free >= 0 && square(crook, Math.min(stretch, length)).compareTo(square(free, length)) <= 0;
    }

    /** True if the board is at least so wide at x and all before, the share of the crook of a stretch so long left over. */
    boolean reaches(long across, long x, long stretch) {
        BigInteger free = square(width - across, length)
                .subtract(big(width - widthEnd).multiply(big(x)).multiply(big(length)));
        return square(crook, Math.min(stretch, length)).compareTo(free) <= 0;
    }

    /** The width at x, rounded up. */
    long widthUpTo(long x) {
        BigInteger[] parts = big(width)
                .multiply(big(length))
                .subtract(big(width - widthEnd).multiply(big(x)))
                .divideAndRemainder(big(length));
        return parts[0].longValueExact() + parts[1].signum();
    }

    /** Width left of a rectangle's far side from y0 to y1 at x, rounded down; not positive where nothing is there. */
    long woodAt(long x, long y0, long y1) {
        BigInteger there = big(width)
                .multiply(big(length))
                .subtract(big(width - widthEnd).multiply(big(x)))
                .divide(big(length));
        return Math.min(there.longValueExact(), y1) - y0;
    }

    /** The least whole hollow over a stretch: its share rounded up. */
    long share(long hollow, long stretch) {
        BigInteger[] parts =
                square(hollow, stretch).divideAndRemainder(big(length).pow(2));
        return parts[0].longValueExact() + parts[1].signum();
    }

    private static BigInteger square(long factor, long side) {
        return big(factor).multiply(big(side).pow(2));
    }

    private static BigInteger big(long value) {
        return BigInteger.valueOf(value);
    }
}
