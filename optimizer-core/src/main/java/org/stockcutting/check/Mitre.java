package org.stockcutting.check;

import java.math.BigInteger;
import org.stockcutting.part.Ends;

/** What mitred ends come to in whole nanometres, by integer roots: the square of the tangent and of the secant of an angle. */
final class Mitre {

    private static final BigInteger TWO = BigInteger.TWO;
    private static final BigInteger THREE = BigInteger.valueOf(3);
    private static final BigInteger FOUR = BigInteger.valueOf(4);

    private Mitre() {}

    /** Width times tangent, rounded down. */
    static long slope(Ends ends, long width) {
        BigInteger square = BigInteger.valueOf(width).pow(2);
        BigInteger slope = switch (ends.angle()) {
            // tan 22.5 = root of 2, less 1.
            case EIGHT_SIDES -> square.multiply(TWO).sqrt().subtract(BigInteger.valueOf(width));
            case SIX_SIDES -> square.divide(THREE).sqrt();
            case FOUR_SIDES -> BigInteger.valueOf(width);
            case THREE_SIDES -> square.multiply(THREE).sqrt();
        };
        return slope.longValueExact();
    }

    /** Kerf times secant, rounded up. */
    static long slot(Ends ends, long kerf) {
        BigInteger square = BigInteger.valueOf(kerf).pow(2);
        BigInteger slot = switch (ends.angle()) {
            // 1 / cos 22.5 squared is 4 less two roots of 2.
            case EIGHT_SIDES ->
                up(square.multiply(FOUR).subtract(square.pow(2).shiftLeft(3).sqrt()));
            case SIX_SIDES -> up(square.multiply(FOUR).add(TWO).divide(THREE));
            case FOUR_SIDES -> up(square.multiply(TWO));
            case THREE_SIDES -> BigInteger.valueOf(kerf).multiply(TWO);
        };
        return slot.longValueExact();
    }

    /** From one part of a stick to the next: up to the next 1/64 in, or tenth of a millimetre. */
    static long pitch(Ends ends, long length, long width, long kerf, boolean imperial) {
        long exact = length + slot(ends, kerf) - (ends.flip() ? slope(ends, width) : 0);
        long step = imperial ? 396_875 : 100_000;
        return (exact + step - 1) / step * step;
    }

    private static BigInteger up(BigInteger square) {
        BigInteger[] root = square.sqrtAndRemainder();
        return root[1].signum() == 0 ? root[0] : root[0].add(BigInteger.ONE);
    }
}
