package org.stockcutting.length;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * Writes lengths as text, exactly for documents or rounded for people.
 *
 * <p>Exact text is read back by a {@link LengthReader} with the same settings as the very same length. Imperial jobs get fractions
 * where the length is a multiple of 1/64 in, else decimal inches where those end, else millimetres, which always do.
 */
public final class LengthWriter {

    private static final long INCH = LengthUnit.INCH.nanometres();
    private static final long FOOT = LengthUnit.FOOT.nanometres();
    private static final long SIXTY_FOURTH = INCH / 64;
    /** An inch is 2^6 x 5^5 x 127 nm: decimals of an inch end exactly where 127 divides the nanometres. */
    private static final long NOT_TEN = 127;

    private static final int INCH_DECIMALS = 6;

    private final LengthUnit unit;
    private final char decimal;

    /** Which way a printed length may differ from the exact one. */
    public enum Rounding {
        NEAREST,
        UP,
        DOWN
    }

    /**
     * @param unit unit of the job
     * @param decimal decimal mark, {@code '.'} or {@code ','}
     */
    public LengthWriter(LengthUnit unit, char decimal) {
        this.unit = unit;
        this.decimal = LengthReader.checkedMark(decimal);
    }

    /** Exact text, such as {@code 16-1/4}, {@code 5.367}, {@code 1' 4-1/2"} (jobs in feet), {@code 406.4}; a difference may be negative. */
    public String exact(Length length) {
        if (length.isNegative()) {
            return "-" + exact(Length.ZERO.minus(length));
        }
        long nanometres = length.nanometres();
        if (!unit.isImperial()) {
            return decimal(nanometres, unit);
        }
        if (nanometres % SIXTY_FOURTH == 0) {
            return unit == LengthUnit.FOOT ? feetAndInches(nanometres) : fraction(nanometres);
        }
        if (nanometres % NOT_TEN == 0) {
            return decimalInches(nanometres) + (unit == LengthUnit.FOOT ? "\"" : "");
        }
        return decimal(nanometres, LengthUnit.MILLIMETRE) + " mm";
    }

    /**
     * Text at a multiple of a step, with {@code ~} before it where that is not the exact length.
     *
     * @param length what to print
     * @param step greater than 0
     * @param rounding which way
     */
    public String rounded(Length length, Length step, Rounding rounding) {
        if (!step.isPositive()) {
            throw new IllegalArgumentException("a rounding step must be more than 0, got " + step);
        }
        long steps = Math.floorDiv(length.nanometres(), step.nanometres());
        long rest = Math.floorMod(length.nanometres(), step.nanometres());
        if (rest == 0) {
            return exact(length);
        }
        boolean up = rounding == Rounding.UP || (rounding == Rounding.NEAREST && rest >= step.nanometres() - rest);
        return "~" + exact(step.times(up ? steps + 1 : steps));
    }

    /** Exact text with the unit's symbol, for sentences where a bare number could be misread. */
    public String withUnit(Length length) {
        String text = exact(length);
        boolean named = text.endsWith("mm") || text.endsWith("\"") || text.endsWith("'");
        return named ? text : text + " " + unit.symbol();
    }

    private String decimal(long nanometres, LengthUnit in) {
        int places = Long.toString(in.nanometres()).length() - 1;
        return plain(BigDecimal.valueOf(nanometres, places));
    }

    private String decimalInches(long nanometres) {
        return plain(BigDecimal.valueOf(nanometres)
                .divide(BigDecimal.valueOf(INCH), INCH_DECIMALS, RoundingMode.UNNECESSARY));
    }

    private String plain(BigDecimal value) {
        String text = value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
        return text.replace('.', decimal);
    }

    private static String feetAndInches(long nanometres) {
        long feet = nanometres / FOOT;
        long rest = nanometres % FOOT;
        if (rest == 0) {
            return feet + "'";
        }
        return (feet == 0 ? "" : feet + "' ") + fraction(rest) + "\"";
    }

    private static String fraction(long nanometres) {
        long whole = nanometres / INCH;
        long parts = nanometres % INCH / SIXTY_FOURTH;
        if (parts == 0) {
            return Long.toString(whole);
        }
        long shared = BigInteger.valueOf(parts).gcd(BigInteger.valueOf(64)).longValueExact();
        return (whole == 0 ? "" : whole + "-") + parts / shared + "/" + 64 / shared;
    }
}
