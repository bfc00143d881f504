package org.stockcutting.length;

import static org.stockcutting.length.LengthFormatException.NOT_A_LENGTH;
import static org.stockcutting.length.LengthFormatException.NOT_EXACT;
import static org.stockcutting.length.LengthFormatException.OUT_OF_RANGE;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.regex.Matcher;

/**
 * Reads lengths as makers write them: {@code 16}, {@code 16 1/4}, {@code 16-1/4"}, {@code 3/4}, {@code 1' 4-1/2"}, {@code 8'},
 * {@code 406 mm}, {@code 1.2 m}, {@code 5 ft}. A number without a unit is in the job's unit.
 *
 * <p>Nothing is guessed: what can be read in two ways, is negative, or is not a whole number of nanometres is refused.
 */
public final class LengthReader {

    /** The longest length that is read: one kilometre. It keeps every product of three lengths and every sum far from overflow. */
    public static final Length LONGEST = Length.ofNanometres(1_000L * LengthUnit.METRE.nanometres());

    private static final BigInteger TWELVE = BigInteger.valueOf(12);
    /** Beyond these powers of ten a number is surely too long, or less than any nanometre. */
    private static final int LARGEST_POWER = 20;

    private static final int SMALLEST_POWER = -20;

    private final LengthUnit unit;
    private final char decimal;
    private final LengthGrammar grammar;
    private final LengthWriter writer;

    /**
     * @param unit unit of plain numbers
     * @param decimal decimal mark of text, {@code '.'} or {@code ','}
     */
    public LengthReader(LengthUnit unit, char decimal) {
        this.unit = unit;
        this.decimal = checkedMark(decimal);
        this.grammar = new LengthGrammar(decimal);
        this.writer = new LengthWriter(unit, decimal);
    }

    static char checkedMark(char decimal) {
        if (decimal != '.' && decimal != ',') {
            throw new IllegalArgumentException("the decimal mark is '.' or ',', got '" + decimal + "'");
        }
        return decimal;
    }

    /**
     * Reads text in any of the forms.
     *
     * @throws LengthFormatException if it is none of them, not exact, negative, or longer than {@link #LONGEST}
     */
    public Length read(String text) {
        String shown = LengthFormatException.shown(text);
        String plain = LengthGrammar.normalised(text);
        if (plain.isEmpty()) {
            throw fault(NOT_A_LENGTH, shown, "a length is missing: write " + examples());
        }
        if (plain.length() > LengthGrammar.LONGEST_TEXT) {
            throw fault(NOT_A_LENGTH, shown, "\"" + shown + "\" is too long for a length: write " + examples());
        }
        if (plain.startsWith("-")) {
            throw fault(OUT_OF_RANGE, shown, "0 or more", "a length cannot be negative, got \"" + shown + "\"");
        }
        refuseOtherMark(plain, shown);
        Matcher pair = grammar.feetAndInches(plain);
        if (pair.matches()) {
            return exact(feetAndInches(pair, shown), shown);
        }
        Matcher single = grammar.single(plain);
        if (single.matches()) {
            Ratio value = number(single, 1, shown);
            LengthUnit own = LengthGrammar.unit(single.group(LengthGrammar.SINGLE_UNIT), unit);
            return exact(value.times(BigInteger.valueOf(own.nanometres())), shown);
        }
        throw fault(NOT_A_LENGTH, shown, "\"" + shown + "\" is not a length: write " + examples());
    }

    /**
     * Takes a number in the job's unit.
     *
     * @throws LengthFormatException if it is not exact, negative, or longer than {@link #LONGEST}
     */
    public Length read(BigDecimal number) {
        String shown = LengthFormatException.shown(number.toString());
        if (number.signum() == 0) {
            return Length.ZERO;
        }
        if (number.signum() < 0) {
            throw fault(OUT_OF_RANGE, shown, "0 or more", "a length cannot be negative, got " + shown);
        }
        // Magnitudes first: 1e999999999 is short to write and must not be spelled out.
        long power = (long) number.precision() - number.scale();
        if (power > LARGEST_POWER) {
            throw tooLong(shown);
        }
        if (power < SMALLEST_POWER) {
            throw notExact(shown, Length.ZERO);
        }
        BigInteger perTen = BigInteger.TEN.pow(Math.max(0, number.scale()));
        BigInteger whole = number.scale() >= 0 ? number.unscaledValue() : number.toBigIntegerExact();
        return exact(new Ratio(whole.multiply(BigInteger.valueOf(unit.nanometres())), perTen), shown);
    }

    private void refuseOtherMark(String plain, String shown) {
        char other = decimal == '.' ? ',' : '.';
        if (plain.indexOf(other) >= 0) {
            String closed = plain.replace(String.valueOf(other), "");
            String marked = plain.replace(other, decimal);
            throw fault(
                    NOT_A_LENGTH,
                    shown,
                    "\"" + shown + "\" can be read in two ways: this job's decimal mark is '" + decimal
                            + "', so write \""
                            + LengthFormatException.shown(marked) + "\" or, without grouping, \""
                            + LengthFormatException.shown(closed) + "\"");
        }
    }

    private Ratio feetAndInches(Matcher pair, String shown) {
        Ratio feet = number(pair, 1, shown);
        Ratio inches = number(pair, 1 + LengthGrammar.NUMBER_GROUPS, shown);
        boolean wholeFeet = feet.denominator().equals(BigInteger.ONE);
        if (!wholeFeet || inches.numerator().compareTo(inches.denominator().multiply(TWELVE)) >= 0) {
            throw fault(
                    NOT_A_LENGTH,
                    shown,
                    "\"" + shown
                            + "\": feet with inches are a whole number of feet and less than 12 in, as in 1' 4-1/2\"");
        }
        BigInteger inch = BigInteger.valueOf(LengthUnit.INCH.nanometres());
        return new Ratio(
                feet.numerator()
                        .multiply(TWELVE)
                        .multiply(inches.denominator())
                        .add(inches.numerator())
                        .multiply(inch),
                inches.denominator());
    }

    private Ratio number(Matcher match, int firstGroup, String shown) {
        String plain = match.group(firstGroup + 3);
        if (plain != null) {
            BigDecimal value = new BigDecimal(plain.replace(decimal, '.'));
            return new Ratio(value.unscaledValue(), BigInteger.TEN.pow(value.scale()));
        }
        String whole = match.group(firstGroup);
        BigInteger numerator = new BigInteger(match.group(firstGroup + 1));
        BigInteger denominator = new BigInteger(match.group(firstGroup + 2));
        if (denominator.signum() == 0) {
            throw fault(NOT_A_LENGTH, shown, "\"" + shown + "\" divides by zero: write a fraction such as 3/4");
        }
        if (whole == null) {
            return new Ratio(numerator, denominator);
        }
        if (numerator.compareTo(denominator) >= 0) {
            throw fault(
                    NOT_A_LENGTH,
                    shown,
                    "\"" + shown + "\": the fraction after a whole number must be less than 1, as in 16-1/4");
        }
        return new Ratio(new BigInteger(whole).multiply(denominator).add(numerator), denominator);
    }

    private Length exact(Ratio nanometres, String shown) {
        BigInteger[] parts = nanometres.numerator().divideAndRemainder(nanometres.denominator());
        BigInteger longest = BigInteger.valueOf(LONGEST.nanometres());
        int side = parts[0].compareTo(longest);
        if (side > 0 || (side == 0 && parts[1].signum() > 0)) {
            throw tooLong(shown);
        }
        long floor = parts[0].longValueExact();
        if (parts[1].signum() == 0) {
            return Length.ofNanometres(floor);
        }
        boolean up = parts[1].shiftLeft(1).compareTo(nanometres.denominator()) >= 0;
        throw notExact(shown, Length.ofNanometres(up ? floor + 1 : floor));
    }

    private LengthFormatException tooLong(String shown) {
        String limit = writer.withUnit(LONGEST);
        return fault(OUT_OF_RANGE, shown, "at most " + limit, shown + " is too long: the longest length is " + limit);
    }

    private LengthFormatException notExact(String shown, Length nearest) {
        String exact = writer.withUnit(nearest);
        String near = unit.isImperial() ? ", the nearest 1/64 in is " + nearest64(nearest) : "";
        return fault(
                NOT_EXACT,
                shown,
                "the nearest exact value is " + exact,
                shown + " is not a whole number of nanometres: the nearest exact value is " + exact + near);
    }

    private String nearest64(Length length) {
        Length step = Length.ofNanometres(LengthUnit.INCH.nanometres() / 64);
        return writer.rounded(length, step, LengthWriter.Rounding.NEAREST).replace("~", "");
    }

    private String examples() {
        String metric = "406" + decimal + "5 mm";
        return unit.isImperial()
                ? "16, 16-1/4, 3/4, 1' 4-1/2\" or " + metric
                : "406, " + metric + ", 40" + decimal + "6 cm or 16-1/4\"";
    }

    private LengthFormatException fault(String code, String shown, String text) {
        return fault(code, shown, "a length such as " + examples(), text);
    }

    private static LengthFormatException fault(String code, String shown, String expected, String text) {
        return new LengthFormatException(code, shown, expected, text);
    }

    /** An exact quotient; the denominator is positive. */
    private record Ratio(BigInteger numerator, BigInteger denominator) {
        Ratio times(BigInteger factor) {
            return new Ratio(numerator.multiply(factor), denominator);
        }
    }
}
