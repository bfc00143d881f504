package org.stockcutting.length;

import java.math.BigDecimal;

/**
 * An exact length or position: a whole number of nanometres, may be negative only as a difference.
 *
 * <p>One inch is 25,400,000 nm, so 1/64 in is exactly 396,875 nm; any decimal of a millimetre down to 0.000001 is exact too.
 *
 * @param nanometres the length in nanometres
 */
public record Length(long nanometres) implements Comparable<Length> {

    public static final Length ZERO = new Length(0);

    public static Length ofNanometres(long nanometres) {
        return nanometres == 0 ? ZERO : new Length(nanometres);
    }

    /**
     * Whole and fractional amounts of a unit, as long as they are exact.
     *
     * @throws ArithmeticException if the amount is not a whole number of nanometres
     */
    public static Length of(BigDecimal amount, LengthUnit unit) {
        return ofNanometres(
                amount.multiply(BigDecimal.valueOf(unit.nanometres())).longValueExact());
    }

    /** Shorthand for tests and embedding: {@code Length.inches("16.25")}. */
    public static Length inches(String decimal) {
        return of(new BigDecimal(decimal), LengthUnit.INCH);
    }

    /** Shorthand for tests and embedding: {@code Length.millimetres("406")}. */
    public static Length millimetres(String decimal) {
        return of(new BigDecimal(decimal), LengthUnit.MILLIMETRE);
    }

    public Length plus(Length other) {
        return ofNanometres(Math.addExact(nanometres, other.nanometres));
    }

    public Length minus(Length other) {
        return ofNanometres(Math.subtractExact(nanometres, other.nanometres));
    }

    public Length times(long factor) {
        return ofNanometres(Math.multiplyExact(nanometres, factor));
    }

    public Length min(Length other) {
        return nanometres <= other.nanometres ? this : other;
    }

    public Length max(Length other) {
        return nanometres >= other.nanometres ? this : other;
    }

    public boolean isPositive() {
        return nanometres > 0;
    }

    public boolean isZero() {
        return nanometres == 0;
    }

    public boolean isNegative() {
        return nanometres < 0;
    }

    public boolean isLessThan(Length other) {
        return nanometres < other.nanometres;
    }

    public boolean isMoreThan(Length other) {
        return nanometres > other.nanometres;
    }

    @Override
    public int compareTo(Length other) {
        return Long.compare(nanometres, other.nanometres);
    }

    @Override
    public String toString() {
        return BigDecimal.valueOf(nanometres, 6).stripTrailingZeros().toPlainString() + " mm";
    }
}
