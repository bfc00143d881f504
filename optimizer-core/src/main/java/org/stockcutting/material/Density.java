package org.stockcutting.material;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.stockcutting.length.Volume;

/**
 * How heavy wood is. Figures of the table are at 12 % moisture; green and treated wood is much heavier.
 *
 * @param kilogramsPerCubicMetre more than 0
 */
public record Density(BigDecimal kilogramsPerCubicMetre) {

    /** A cubic metre is 10^27 cubic nanometres. */
    private static final int DECIMALS_OF_A_CUBIC_METRE = 27;

    private static final BigDecimal POUND = new BigDecimal("0.45359237");
    private static final BigDecimal CUBIC_FOOT = new BigDecimal("0.028316846592");

    /**
     * So many pounds per cubic foot, kept in kilograms per cubic metre to six decimals: a weight of nine figures is as exact as any
     * scale.
     */
    public static Density poundsPerCubicFoot(BigDecimal pounds) {
        return new Density(pounds.multiply(POUND).divide(CUBIC_FOOT, 6, RoundingMode.HALF_UP));
    }

    /** What this volume weighs, exactly. */
    public Weight of(Volume volume) {
        return new Weight(new BigDecimal(volume.cubicNanometres())
                .movePointLeft(DECIMALS_OF_A_CUBIC_METRE)
                .multiply(kilogramsPerCubicMetre));
    }
}
