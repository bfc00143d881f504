package org.stockcutting.material;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * An exact weight. The pound is exactly 0.45359237 kg (international avoirdupois pound, agreement of 1959).
 *
 * @param kilograms any number of decimals
 */
public record Weight(BigDecimal kilograms) implements Comparable<Weight> {

    public static final Weight ZERO = new Weight(BigDecimal.ZERO);

    private static final BigDecimal POUND = new BigDecimal("0.45359237");

    /** So many pounds, exactly. */
    public static Weight pounds(BigDecimal pounds) {
        return new Weight(pounds.multiply(POUND));
    }

    /** In pounds, rounded half up. */
    public BigDecimal inPounds(int decimals) {
        return kilograms.divide(POUND, decimals, RoundingMode.HALF_UP);
    }

    /** In kilograms, rounded half up. */
    public BigDecimal inKilograms(int decimals) {
        return kilograms.setScale(decimals, RoundingMode.HALF_UP);
    }

    public Weight plus(Weight other) {
        return new Weight(kilograms.add(other.kilograms));
    }

    public Weight times(long factor) {
        return new Weight(kilograms.multiply(BigDecimal.valueOf(factor)));
    }

    @Override
    public int compareTo(Weight other) {
        return kilograms.compareTo(other.kilograms);
    }

    /** Weights that compare as equal are equal, whatever decimals they were written with. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Weight weight && kilograms.compareTo(weight.kilograms) == 0;
    }

    @Override
    public int hashCode() {
        return kilograms.stripTrailingZeros().hashCode();
    }
}
