package org.stockcutting.stock;

import java.math.BigInteger;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;

/**
 * How a yard counts board feet of boards that no trade size names the width of. It is a matter of the bill: fit is decided by measured
 * sizes. Lumber under 1 in thick counts as 1 in throughout.
 */
public enum Tally {
    /** Sizes as they are measured. */
    EXACT("exact"),
    /**
     * Hardwood as graded lumber is tallied (NHLA rules, as secondary sources report them): whole feet of length, fractions dropped; width
     * in inches times feet over 12 is the surface measure, to the nearest whole foot; that times the thickness in inches. Exact halves go up,
     * as many yards have it: taking turns up and down, as graders do, is no price of one board.
     */
    SURFACE_MEASURE("surface-measure"),
    /**
     * The width to the next inch; whole feet of length, and the next one where more than 3 in are over; the thickness to the next quarter
     * of an inch. Seen in retail.
     */
    NEXT_INCH("next-inch"),
    /** The width to the next half inch. Seen in retail. */
    HALF_INCH("half-inch");

    private static final long INCH = LengthUnit.INCH.nanometres();
    private static final long FOOT = LengthUnit.FOOT.nanometres();
    private static final long OVER = 3 * INCH;
    private static final BigInteger SQUARE_FOOT = BigInteger.valueOf(FOOT).pow(2);

    private final String word;

    Tally(String word) {
        this.word = word;
    }

    /** The word used in documents. */
    public String word() {
        return word;
    }

    /** What is counted of one board, in cubic nanometres: 144 cubic inches are a board foot. */
    BigInteger volume(Length length, Length width, Length thickness) {
        long thick = Math.max(thickness.nanometres(), INCH);
        return switch (this) {
            case EXACT -> product(length.nanometres(), width.nanometres(), thick);
            case SURFACE_MEASURE ->
                surface(length.nanometres() / FOOT, width.nanometres())
                        .multiply(SQUARE_FOOT)
                        .multiply(BigInteger.valueOf(thick));
            case NEXT_INCH -> product(feet(length.nanometres()), up(width.nanometres(), INCH), up(thick, INCH / 4));
            case HALF_INCH -> product(length.nanometres(), up(width.nanometres(), INCH / 2), thick);
        };
    }

    /** Square feet of so many feet by so wide, the nearest whole number, halves up. */
    private static BigInteger surface(long feet, long width) {
        BigInteger twice =
                BigInteger.valueOf(feet).multiply(BigInteger.valueOf(width)).shiftLeft(1);
        BigInteger unit = BigInteger.valueOf(FOOT);
        return twice.add(unit).divide(unit.shiftLeft(1));
    }

    private static long feet(long length) {
        long over = length % FOOT;
        return length - over + (over > OVER ? FOOT : 0);
    }

    private static long up(long size, long step) {
        return -Math.floorDiv(-size, step) * step;
    }

    private static BigInteger product(long length, long width, long thickness) {
        return BigInteger.valueOf(length).multiply(BigInteger.valueOf(width)).multiply(BigInteger.valueOf(thickness));
    }
}
