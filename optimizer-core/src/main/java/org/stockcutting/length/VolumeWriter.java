package org.stockcutting.length;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * Writes volumes exactly: plain cubic inches in imperial jobs where the decimals end, plain cubic millimetres in metric jobs, else cubic
 * millimetres with {@code mm3} behind them. The decimal mark is always a point.
 */
public final class VolumeWriter {

    /** A cubic millimetre is 10^18 nm^3. */
    static final int MM3_PLACES = 18;
    /** A cubic inch is (2^6 x 5^5 x 127)^3 nm^3: its decimals end exactly where 127^3 divides, after at most 18 places. */
    private static final BigInteger NOT_TEN = BigInteger.valueOf(127).pow(3);

    private static final int IN3_PLACES = 18;

    private final LengthUnit unit;

    public VolumeWriter(LengthUnit unit) {
        this.unit = unit;
    }

    /** Exact text that a {@link VolumeReader} of the same unit reads back as the same volume. */
    public String exact(Volume volume) {
        BigInteger amount = volume.cubicNanometres();
        if (!unit.isImperial()) {
            return plain(new BigDecimal(amount, MM3_PLACES));
        }
        if (amount.mod(NOT_TEN).signum() == 0) {
            BigDecimal inch = new BigDecimal(cubicInch());
            return plain(new BigDecimal(amount).divide(inch, IN3_PLACES, RoundingMode.UNNECESSARY));
        }
        return plain(new BigDecimal(amount, MM3_PLACES)) + " mm3";
    }

    static BigInteger cubicInch() {
        return BigInteger.valueOf(LengthUnit.INCH.nanometres()).pow(3);
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
