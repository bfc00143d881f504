package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.StockType;

/**
 * What rests of one board with bad zones are worth to the search: the most that edge-to-edge cuts along the sides of its zones leave in
 * clear rectangles, each worth its {@link Yard#clearValue}. A rest with a knot in its middle is worth less than one with a knot at its end.
 */
final class ZonedRest {

    /** Longer boards than fit the key are worth their area, zones left aside. */
    private static final long LONGEST = 1 << 15;
    /** More zones than this in one rest are not looked at one by one. */
    private static final int MOST_ZONES = 8;

    private final Yard yard;
    private final Model model;
    private final int stock;
    private final List<StockType.ZoneRect> zones;
    private final boolean small;
    private final RestMemory known = new RestMemory();

    ZonedRest(Yard yard, int stock) {
        this.yard = yard;
        this.model = yard.model;
        this.stock = stock;
        this.zones = model.stock(stock).zones().stream().filter(this::matters).toList();
        this.small = model.boardLength(stock) < LONGEST && model.boardWidth(stock) < LONGEST;
    }

    /** A zone that most of the wood wanted from this board has to keep clear of. */
    private boolean matters(StockType.ZoneRect zone) {
        double kept = 0;
        double all = 0;
        for (int t = 0; t < model.types; t++) {
            if (model.hasPlace(stock, t)) {
                double wood = model.area(t) * model.item(t).demand();
                all += wood;
                kept += model.blocks(stock, zone, t) ? wood : 0;
            }
        }
        return 2 * kept >= all;
    }

    /** Worth of the rest with this corner and these padded extents. */
    double value(long x, long y, long length, long width) {
        double plain = yard.clearValue(stock, length, width);
        if (plain == 0 || !small || zones.isEmpty()) {
            return plain;
        }
        List<StockType.ZoneRect> bad = new ArrayList<>();
        for (StockType.ZoneRect zone : zones) {
            if (x < zone.x1()
                    && x + length - model.kerfX > zone.x0()
                    && y < zone.y1()
                    && y + width - model.kerfY > zone.y0()) {
                bad.add(zone);
            }
        }
        if (bad.isEmpty()) {
            return plain;
        }
        long key = (x << 45) + (y << 30) + (length << 15) + width;
        double value = known.get(key);
        if (value < 0) {
            yard.count(30L * bad.size());
            value = bad.size() > MOST_ZONES ? 0 : parted(bad, x, y, length, width);
            known.put(key, value);
        }
        return value;
    }

    private double parted(List<StockType.ZoneRect> bad, long x, long y, long length, long width) {
        double most = 0;
        for (StockType.ZoneRect zone : bad) {
            most = Math.max(most, crosscut(zone.x0() - x + model.kerfX, x, y, length, width));
            most = Math.max(most, crosscut(zone.x1() - x, x, y, length, width));
            most = Math.max(most, ripped(zone.y0() - y + model.kerfY, x, y, length, width));
            most = Math.max(most, ripped(zone.y1() - y, x, y, length, width));
        }
        return most;
    }

    private double crosscut(long at, long x, long y, long length, long width) {
        return at <= 0 || at >= length ? 0 : value(x, y, at, width) + value(x + at, y, length - at, width);
    }

    private double ripped(long at, long x, long y, long length, long width) {
        return at <= 0 || at >= width ? 0 : value(x, y, length, at) + value(x, y + at, length, width - at);
    }
}
