package org.stockcutting.job;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Trim;

/**
 * The shop: saws, trims, what is kept, how exact thickness must be.
 *
 * @param kerf kerf of each saw
 * @param boardTrim trim of boards that have none of their own
 * @param sheetTrim trim of sheets that have none of their own
 * @param limits saw limits
 * @param keepOffcuts offcuts that satisfy any of these go back on the rack
 * @param thicknessTolerance greatest difference of thickness where nothing is planed
 * @param maxPlaning most that is planed off a rough piece beyond its rough thickness
 * @param carLength longest stock that may be bought, or null
 */
public record ShopRules(
        Kerf kerf,
        Trim boardTrim,
        Trim sheetTrim,
        SawLimits limits,
        List<KeepRule> keepOffcuts,
        Length thicknessTolerance,
        Length maxPlaning,
        @Nullable Length carLength) {

    public ShopRules {
        keepOffcuts = List.copyOf(keepOffcuts);
    }

    /** A shop of which nothing is known: 1/8 in kerfs, no trims, no limits, 1/16 in thickness tolerance, 1/2 in planing. */
    public static ShopRules defaults() {
        Length eighth = Length.inches("0.125");
        return new ShopRules(
                new Kerf(eighth, eighth),
                Trim.NONE,
                Trim.NONE,
                SawLimits.NONE,
                List.of(),
                Length.inches("0.0625"),
                Length.inches("0.5"),
                null);
    }
}
