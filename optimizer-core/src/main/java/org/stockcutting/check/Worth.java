package org.stockcutting.check;

import java.math.BigInteger;

/**
 * What one part is worth on one board.
 *
 * @param rough the rough piece
 * @param value worth of one piece in units; for a stave the worth of one nanometre of jointed width
 * @param cap how much of it is wanted at all: pieces, or nanometres of panel width; more than that in one pattern is worth nothing
 * @param straight true if it may lie straight
 * @param turned true if it may lie turned
 * @param length extent along its own length
 * @param leastWidth least rough width on this board
 * @param mostWidth greatest rough width of use
 */
record Worth(
        Rough rough,
        long value,
        long cap,
        boolean straight,
        boolean turned,
        long length,
        long leastWidth,
        long mostWidth) {

    boolean isStave() {
        return rough.isStave();
    }

    /** Jointed width of the widest stave. */
    long mostJointed() {
        return mostWidth - rough.perStave();
    }

    /** Worth of the most valuable single piece. */
    long single() {
        return isStave() ? Math.multiplyExact(value, mostJointed()) : value;
    }

    /** Area with its cuts, in the direction that takes less. */
    BigInteger folded(long crosscutKerf, long ripKerf) {
        BigInteger lying = times(length + crosscutKerf, mostWidth + ripKerf);
        BigInteger upright = times(length + ripKerf, mostWidth + crosscutKerf);
        if (!straight) {
            return upright;
        }
        return turned ? lying.min(upright) : lying;
    }

    static BigInteger times(long a, long b) {
        return BigInteger.valueOf(a).multiply(BigInteger.valueOf(b));
    }
}
