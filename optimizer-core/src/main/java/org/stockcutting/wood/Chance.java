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
        // Where all or none went well the limits have closed forms, and the library has none.
        double extreme = StrictMath.pow((1 - CONFIDENCE) / 2, 1.0 / trials);
        double low = finished == 0
                ? 0
                : finished == trials ? extreme : interval(finished, trials).getLowerBound();
        double high = finished == trials
                ? 1
                : finished == 0 ? 1 - extreme : interval(finished, trials).getUpperBound();
        return new Chance(
                finished,
                trials,
                BigDecimal.valueOf(finished).divide(BigDecimal.valueOf(trials), DIGITS, RoundingMode.HALF_UP),
                new BigDecimal(low).setScale(DIGITS, RoundingMode.FLOOR),
                new BigDecimal(high).setScale(DIGITS, RoundingMode.CEILING));
    }

    private static ConfidenceInterval interval(int finished, int trials) {
        return new ClopperPearsonInterval().createInterval(trials, finished, CONFIDENCE);
    }
}
