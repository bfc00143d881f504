package org.stockcutting.bench.quality;

import java.util.Locale;

/** Numbers as reports print them. */
final class Figures {

    private static final double PERCENT = 100;

    private Figures() {}

    static String percent(double share, int decimals) {
        return Double.isNaN(share) ? "-" : String.format(Locale.ROOT, "%." + decimals + "f %%", PERCENT * share);
    }

    static String seconds(double seconds) {
        return Double.isNaN(seconds) ? "-" : String.format(Locale.ROOT, "%.2f", seconds);
    }

    /** The interval of the mean of shares, which cannot leave 0 to 1; one job has none. */
    static String interval(Distribution d, int decimals) {
        return d.count() < 2
                ? "-"
                : percent(Math.max(0, d.low()), decimals) + " to " + percent(Math.min(1, d.high()), decimals);
    }
}
