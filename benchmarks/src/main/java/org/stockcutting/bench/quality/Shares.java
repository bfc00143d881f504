package org.stockcutting.bench.quality;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import org.stockcutting.length.Volume;
import org.stockcutting.plan.YieldFigures;

/**
 * Where the wood of one plan went, as shares of what was used, six decimals; all 0 where nothing was.
 *
 * @param parts finished parts
 * @param allowance milled away
 * @param kerf saw dust
 * @param trim trimmed ends and edges
 * @param zones bad zones
 * @param offcutsKept back on the rack
 * @param waste the rest
 */
record Shares(
        BigDecimal parts,
        BigDecimal allowance,
        BigDecimal kerf,
        BigDecimal trim,
        BigDecimal zones,
        BigDecimal offcutsKept,
        BigDecimal waste) {

    static final List<String> NAMES = List.of("parts", "allowance", "kerf", "trim", "zones", "offcutsKept", "waste");
    static final Shares NONE = of(List.of(
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            BigDecimal.ZERO,
            BigDecimal.ZERO));

    private static final int DECIMALS = 6;

    static Shares of(YieldFigures figures) {
        Volume used = figures.used();
        return new Shares(
                share(figures.parts(), used),
                share(figures.allowance(), used),
                share(figures.kerf(), used),
                share(figures.trim(), used),
                share(figures.zones(), used),
                share(figures.offcutsKept(), used),
                share(figures.waste(), used));
    }

    /** In the order of {@link #NAMES}. */
    static Shares of(List<BigDecimal> values) {
        return new Shares(
                values.get(0),
                values.get(1),
                values.get(2),
                values.get(3),
                values.get(4),
                values.get(5),
                values.get(6));
    }

    List<BigDecimal> values() {
        return List.of(parts, allowance, kerf, trim, zones, offcutsKept, waste);
    }

    private static BigDecimal share(Volume part, Volume whole) {
        return quotient(part.cubicNanometres(), whole.cubicNanometres(), DECIMALS);
    }

    static BigDecimal quotient(BigInteger part, BigInteger whole, int decimals) {
        return whole.signum() == 0
                ? BigDecimal.ZERO
                : new BigDecimal(part).divide(new BigDecimal(whole), decimals, RoundingMode.HALF_UP);
    }
}
