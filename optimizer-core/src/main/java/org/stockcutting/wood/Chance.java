package org.stockcutting.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;

/**
 * A chance that was counted: how many trials went well, and between which values the true chance lies with 95 % confidence, by Clopper and
 * Pearson (Biometrika 26, 1934): never too narrow.
 *
 * @param finished trials that went well
 * @param trials all trials, at least 1
 * @param share finished over trials, four digits
 * @param low lower end of the interval, rounded down
 * @param high upper end, rounded up
 */
public record Chance(int finished, int trials, BigDecimal share, BigDecimal low, BigDecimal high) {

    private static final double CONFIDENCE = 0.95;
    private static final int DIGITS = 4;

    /** The chance behind a count. */
    public static Chance of(int finished, int trials) {
        ConfidenceInterval interval = new ClopperPearsonInterval().createInterval(trials, finished, CONFIDENCE);
        // At the ends the exact limits are 0 and 1; the library's quantiles need not be.
        double low = finished == 0 ? 0 : interval.getLowerBound();
        double high = finished == trials ? 1 : interval.getUpperBound();
        return new Chance(
                finished,
                trials,
                BigDecimal.valueOf(finished).divide(BigDecimal.valueOf(trials), DIGITS, RoundingMode.HALF_UP),
                new BigDecimal(low).setScale(DIGITS, RoundingMode.FLOOR),
                new BigDecimal(high).setScale(DIGITS, RoundingMode.CEILING));
    }
}
