package org.stockcutting.solve;

import org.stockcutting.job.Kerf;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Nails in the trims of a board. Engines see the usable rectangle only, but trims are cut off by cuts of their own, and cuts over the
 * whole board run through its trims: metal out there is drawn into the usable rectangle, far enough that no such cut can meet it. That
 * may be farther than need be.
 */
final class TrimMetal {

    private final StockItem item;
    private final UsableArea area;
    private final Kerf kerf;

    TrimMetal(StockItem item, UsableArea area, Kerf kerf) {
        this.item = item;
        this.area = area;
        this.kerf = kerf;
    }

    /**
     * The rectangle that engines are to see.
     *
     * @param zone a zone of metal
     * @param rect its usable part in instance units, empty where it lies in a trim
     * @param length usable length in instance units
     * @param width usable width in instance units
     */
    StockType.ZoneRect widen(Zone zone, StockType.ZoneRect rect, long length, long width) {
        Length fromEdge = zone.fromEdge() == null ? Length.ZERO : zone.fromEdge();
        Length toEdge = zone.toEdge() == null ? item.width() : zone.toEdge();
        boolean across = !area.y0().isLessThan(fromEdge) && !toEdge.isLessThan(area.y1());
        boolean along = !area.x0().isLessThan(zone.from()) && !zone.to().isLessThan(area.x1());
        boolean meetsEnd = meets(zone.from(), zone.to(), area.x0(), area.x1(), item.length(), kerf.crosscut());
        boolean meetsEdge = meets(fromEdge, toEdge, area.y0(), area.y1(), item.width(), kerf.rip());
        // At least a unit of the usable rectangle, next to where it is.
        long x0 = Math.max(0, Math.min(rect.x0(), length - 1));
        long x1 = Math.min(length, Math.max(rect.x1(), x0 + 1));
        long y0 = Math.max(0, Math.min(rect.y0(), width - 1));
        long y1 = Math.min(width, Math.max(rect.y1(), y0 + 1));
        if (meetsEnd && !across) {
            // A row that holds it cannot be trimmed, so nothing comes from that row.
            x0 = 0;
            x1 = length;
        } else if (meetsEdge && !along) {
            y0 = 0;
            y1 = width;
        }
        return new StockType.ZoneRect(x0, y0, x1, y1, rect.severity(), true);
    }

    /** True if it lies in the way of a cut that trims either end. */
    private static boolean meets(Length from, Length to, Length start, Length end, Length raw, Length kerf) {
        boolean first =
                !start.isZero() && from.isLessThan(start) && start.minus(kerf).isLessThan(to);
        boolean last = end.isLessThan(raw) && end.isLessThan(to) && from.isLessThan(end.plus(kerf));
        return first || last;
    }
}
