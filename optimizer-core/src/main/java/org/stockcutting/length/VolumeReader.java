package org.stockcutting.length;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads what {@link VolumeWriter} writes: a decimal number in the job's cubic unit, or one with {@code mm3} behind it. */
public final class VolumeReader {

    private static final int LONGEST_TEXT = 80;
    private static final Pattern FORM = Pattern.compile("(-?[0-9]+(?:\\.[0-9]+)?)( mm3)?");
    private static final BigInteger CUBIC_MILLIMETRE = BigInteger.TEN.pow(VolumeWriter.MM3_PLACES);

    private final LengthUnit unit;

    public VolumeReader(LengthUnit unit) {
        this.unit = unit;
    }

    /**
     * Reads an exact volume.
     *
     * @throws LengthFormatException if it is not written so, or not a whole number of cubic nanometres
     */
    public Volume read(String text) {
        String shown = LengthFormatException.shown(text);
        Matcher form = FORM.matcher(text);
        if (text.length() > LONGEST_TEXT || !form.matches()) {
            throw new LengthFormatException(
                    LengthFormatException.NOT_A_LENGTH,
                    shown,
                    "a volume such as 216.5 or 12000 mm3",
                    "\"" + shown
                            + "\" is not a volume: write a decimal number, with mm3 behind it for cubic millimetres");
        }
        boolean inches = form.group(2) == null && unit.isImperial();
        BigDecimal cubicUnit = new BigDecimal(inches ? VolumeWriter.cubicInch() : CUBIC_MILLIMETRE);
        BigDecimal amount = new BigDecimal(form.group(1)).multiply(cubicUnit).stripTrailingZeros();
        if (amount.scale() > 0) {
            throw new LengthFormatException(
                    LengthFormatException.NOT_EXACT,
                    shown,
                    "at most 18 decimals of a cubic millimetre",
                    shown + " is not a whole number of cubic nanometres: write it in mm3 with at most 18 decimals");
        }
        return new Volume(amount.toBigIntegerExact());
    }
}
