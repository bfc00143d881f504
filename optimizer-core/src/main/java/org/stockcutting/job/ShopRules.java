package org.stockcutting.job;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

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
 * @param zoneMargin how far clear parts keep away from bad zones, 0 or more
 * @param stopReach longest piece that the stop of the crosscut saw reaches, or null where it reaches any; longer ones are measured
 * @param machines jointer, planer and the saw for first cuts
 * @param setUpPrice what one set-up is worth to the shop, 0 or more, or null where set-ups are only saved at no cost
 */
public record ShopRules(
        Kerf kerf,
        Trim boardTrim,
        Trim sheetTrim,
        SawLimits limits,
        List<KeepRule> keepOffcuts,
        Length thicknessTolerance,
        Length maxPlaning,
        @Nullable Length carLength,
        Length zoneMargin,
        @Nullable Length stopReach,
        Machines machines,
        @Nullable Money setUpPrice) {

    public ShopRules {
        keepOffcuts = List.copyOf(keepOffcuts);
    }

    /** A shop where clear wood may begin right beside a bad zone, with a stop of any reach and machines nobody told about. */
    public ShopRules(
            Kerf kerf,
            Trim boardTrim,
            Trim sheetTrim,
            SawLimits limits,
            List<KeepRule> keepOffcuts,
            Length thicknessTolerance,
            Length maxPlaning,
            @Nullable Length carLength) {
        this(
                kerf,
                boardTrim,
                sheetTrim,
                limits,
                keepOffcuts,
                thicknessTolerance,
                maxPlaning,
                carLength,
                Length.ZERO,
                null,
                Machines.UNKNOWN,
                null);
    }

    /** The same shop with another trim of boards. */
    public ShopRules withBoardTrim(Trim other) {
        return with(draft -> draft.boardTrim = other);
    }

    /** The same shop with other saws. */
    public ShopRules withLimits(SawLimits other) {
        return with(draft -> draft.limits = other);
    }

    /** The same shop that keeps other offcuts. */
    public ShopRules withKeepOffcuts(List<KeepRule> other) {
        return with(draft -> draft.keepOffcuts = other);
    }

    /** The same shop with another car, or none. */
    public ShopRules withCarLength(@Nullable Length other) {
        return with(draft -> draft.carLength = other);
    }

    /** The same shop, clear parts so far away from bad zones. */
    public ShopRules withZoneMargin(Length other) {
        return with(draft -> draft.zoneMargin = other);
    }

    /** The same shop with a stop that reaches so far, or any length. */
    public ShopRules withStopReach(@Nullable Length other) {
        return with(draft -> draft.stopReach = other);
    }

    /** The same shop with other machines. */
    public ShopRules withMachines(Machines other) {
        return with(draft -> draft.machines = other);
    }

    /** The same shop, a set-up worth so much, or nothing said about it. */
    public ShopRules withSetUpPrice(@Nullable Money other) {
        return with(draft -> draft.setUpPrice = other);
    }

    /** Bad zones of the stock, and around each of them the margin that clear parts keep away from it. */
    public List<Zone> zonesOf(StockItem stock) {
        if (zoneMargin.isZero()) {
            return stock.zones();
        }
        List<Zone> zones = new ArrayList<>(stock.zones());
        stock.zones().forEach(zone -> zones.add(zone.widened(zoneMargin, stock.length(), stock.width())));
        return zones;
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

    private ShopRules with(Consumer<Draft> change) {
        Draft draft = new Draft(this);
        change.accept(draft);
        return draft.done();
    }

    /** All fields, some of them to be replaced: the one place that lists them, since records of Java 17 have no other way. */
    private static final class Draft {

        private Kerf kerf;
        private Trim boardTrim;
        private Trim sheetTrim;
        private SawLimits limits;
        private List<KeepRule> keepOffcuts;
        private Length thicknessTolerance;
        private Length maxPlaning;
        private @Nullable Length carLength;
        private Length zoneMargin;
        private @Nullable Length stopReach;
        private Machines machines;
        private @Nullable Money setUpPrice;

        Draft(ShopRules from) {
            kerf = from.kerf;
            boardTrim = from.boardTrim;
            sheetTrim = from.sheetTrim;
            limits = from.limits;
            keepOffcuts = from.keepOffcuts;
            thicknessTolerance = from.thicknessTolerance;
            maxPlaning = from.maxPlaning;
            carLength = from.carLength;
            zoneMargin = from.zoneMargin;
            stopReach = from.stopReach;
            machines = from.machines;
            setUpPrice = from.setUpPrice;
        }

        ShopRules done() {
            return new ShopRules(
                    kerf,
                    boardTrim,
                    sheetTrim,
                    limits,
                    keepOffcuts,
                    thicknessTolerance,
                    maxPlaning,
                    carLength,
                    zoneMargin,
                    stopReach,
                    machines,
                    setUpPrice);
        }
    }
}
