package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.solve.instance.Answer;

/**
 * Turns an engine's floating duals into exact rationals on a grid of 2^-30, rounded down; the certificate checker makes the proof, so
 * nothing here has to be right, only good.
 */
final class Duals {

    private static final BigInteger GRID = BigInteger.ONE.shiftLeft(30);

    private Duals() {}

    static SortedMap<String, BigFraction> of(Reduced reduced, Answer answer) {
        SortedMap<String, BigFraction> duals = new TreeMap<>();
        for (int i = 0; i < reduced.members().size() && i < answer.duals().size(); i++) {
            double value = answer.duals().get(i);
            if (!(value > 0) || value > Long.MAX_VALUE / 2.0) {
                continue;
            }
            BigInteger steps = java.math.BigDecimal.valueOf(value)
                    .multiply(new java.math.BigDecimal(GRID))
                    .toBigInteger();
            BigFraction perPiece = new BigFraction(steps.multiply(reduced.costUnit()), GRID);
            for (RoughPiece piece : reduced.members().get(i)) {
                duals.put(piece.part().id(), perRow(piece, perPiece));
            }
        }
        return duals;
    }

    /** A certificate row is a rough piece, or for a panel a nanometre of width. */
    private static BigFraction perRow(RoughPiece piece, BigFraction perPiece) {
        if (piece.kind() == RoughPiece.Kind.STAVE && piece.jointedWidth() != null) {
            return perPiece.divide(BigInteger.valueOf(piece.jointedWidth().nanometres()));
        }
        return perPiece;
    }
}
