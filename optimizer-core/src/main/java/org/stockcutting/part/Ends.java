package org.stockcutting.part;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.stockcutting.length.Length;

/**
 * Both ends of a part mitred alike, as those of frames are; its length is from long point to long point. Several may come one behind the
 * other out of one straight stick. Neighbours along the long edge are one slanted slot apart, kerf / cos(angle); where the section looks the
 * same when it is turned over, every second one is, and they share the cut: then the pitch is shorter by width * tan(angle). Common
 * practice, no source.
 *
 * @param angle how far both ends are off square
 * @param stick how many come out of one stick, at least 1
 * @param flip true if every second one of a stick may be turned over
 */
public record Ends(Angle angle, int stick, boolean flip) {

    /** Digits that roots are taken to: nanometres of the longest board are 14. */
    private static final MathContext DIGITS = new MathContext(40);

    private static final BigDecimal TWO = BigDecimal.valueOf(2);
    private static final BigDecimal THREE = BigDecimal.valueOf(3);

    /** Angles of frames with eight, six, four and three sides. */
    public enum Angle {
        EIGHT_SIDES("22.5"),
        SIX_SIDES("30"),
        FOUR_SIDES("45"),
        THREE_SIDES("60");

        private final String word;

        Angle(String word) {
            this.word = word;
        }

        /** Degrees, as they stand in documents. */
        public String word() {
            return word;
        }

        private BigDecimal tangent() {
            return switch (this) {
                case EIGHT_SIDES -> TWO.sqrt(DIGITS).subtract(BigDecimal.ONE);
                case SIX_SIDES -> THREE.sqrt(DIGITS).divide(THREE, DIGITS);
                case FOUR_SIDES -> BigDecimal.ONE;
                case THREE_SIDES -> THREE.sqrt(DIGITS);
            };
        }

        private BigDecimal secant() {
            return switch (this) {
                case EIGHT_SIDES ->
                    BigDecimal.valueOf(4)
                            .subtract(TWO.multiply(TWO.sqrt(DIGITS)))
                            .sqrt(DIGITS);
                case SIX_SIDES -> TWO.divide(THREE.sqrt(DIGITS), DIGITS);
                case FOUR_SIDES -> TWO.sqrt(DIGITS);
                case THREE_SIDES -> TWO;
            };
        }
    }

    /** The same ends, so many out of one stick. */
    public Ends withStick(int other) {
        return new Ends(angle, other, flip);
    }

    /** How much shorter the short edge is at one end, rounded down to a nanometre. */
    public Length slope(Length width) {
        return rounded(width, angle.tangent(), RoundingMode.FLOOR);
    }

    /** From one part of a stick to the next, rounded up to what a rule shows: 1/64 in, or a tenth of a millimetre. */
    public Length pitch(Length length, Length width, Length kerf, boolean imperial) {
        Length slot = rounded(kerf, angle.secant(), RoundingMode.CEILING);
        Length exact = flip ? length.minus(slope(width)).plus(slot) : length.plus(slot);
        Length step = imperial ? Length.inches("0.015625") : Length.millimetres("0.1");
        return step.times(-Math.floorDiv(-exact.nanometres(), step.nanometres()));
    }

    private static Length rounded(Length length, BigDecimal factor, RoundingMode mode) {
        BigDecimal exact = BigDecimal.valueOf(length.nanometres()).multiply(factor);
        return Length.ofNanometres(exact.setScale(0, mode).longValueExact());
    }
}
