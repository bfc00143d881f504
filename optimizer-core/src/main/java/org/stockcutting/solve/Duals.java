package org.stockcutting.solve;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.length.Length;

/**
 * Turns an engine's floating duals into exact rationals on a grid of 2^-30, rounded down; the certificate checker makes the proof, so
 * nothing here has to be right, only good.
 */
final class Duals {

    private static final BigInteger GRID = BigInteger.ONE.shiftLeft(30);

    private Duals() {}

    static SortedMap<String, BigFraction> of(Reduced reduced, List<Double> worths) {
        SortedMap<String, BigFraction> duals = new TreeMap<>();
        SortedMap<String, Panel> panels = new TreeMap<>();
        for (int i = 0; i < reduced.members().size() && i < worths.size(); i++) {
            double value = worths.get(i);
            boolean none = !(value > 0) || value > Long.MAX_VALUE / 2.0;
            BigInteger steps = none
                    ? BigInteger.ZERO
                    : BigDecimal.valueOf(value).multiply(new BigDecimal(GRID)).toBigInteger();
            BigFraction perPiece = new BigFraction(steps.multiply(reduced.costUnit()), GRID);
            for (RoughPiece piece : reduced.members().get(i)) {
                if (piece.jointedWidth() != null) {
                    panels.merge(piece.part().id(), Panel.of(piece, perPiece, piece.jointedWidth()), Panel::plus);
                } else if (!none) {
                    duals.put(piece.part().id(), perPiece);
                }
            }
        }
        panels.forEach((part, panel) -> {
            if (panel.worth().compareTo(BigFraction.ZERO) > 0) {
                duals.put(part, panel.worth().divide(panel.width()));
            }
        });
        return duals;
    }

    /** A certificate row is a rough piece, but for a panel a nanometre of its width: the worth of its staves over their widths. */
    private record Panel(BigFraction worth, BigInteger width) {

        static Panel of(RoughPiece staves, BigFraction each, Length jointed) {
            return new Panel(
                    each.multiply(staves.perPart()),
                    BigInteger.valueOf(jointed.nanometres()).multiply(BigInteger.valueOf(staves.perPart())));
        }

        Panel plus(Panel other) {
            return new Panel(worth.add(other.worth), width.add(other.width));
        }
    }
}
