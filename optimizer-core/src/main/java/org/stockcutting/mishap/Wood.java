package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Condition;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Taper;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** Pieces of boards as stock on hand: sawn sides need no trim, raw ones what the board needed there, bad zones move along. */
public final class Wood {

    private Wood() {}

    /** A left-over of a layout as a piece on hand of its own. */
    public static StockItem.OnHand offcut(Job job, StockItem stock, Layout.LeftOver rest, String id) {
        Area area = new Area(
                rest.x(), rest.y(), rest.x().plus(rest.length()), rest.y().plus(rest.width()));
        return piece(job, stock, area, stock.zones(), id);
    }

    static StockItem.OnHand piece(Job job, StockItem stock, Area area, List<Zone> zones, String id) {
        boolean whole = area.x0().isZero()
                && area.y0().isZero()
                && area.x1().equals(stock.length())
                && area.y1().equals(stock.width());
        return new StockItem.OnHand(
                id,
                stock.form(),
                area.width().equals(stock.width()) ? stock.nominal() : null,
                area.length(),
                area.width(),
                stock.thickness(),
                stock.material(),
                stock.grain(),
                whole ? stock.ownTrim() : trim(job, stock, area),
                1,
                whole ? zones : zonesOn(area, joined(zones, missing(job, stock)), stock),
                whole ? stock.condition() : condition(stock, area),
                stock.grade());
    }

    /** A sawn piece keeps the rectangle that the plan gave it; what the taper takes from it counts as bad wood. */
    private static Condition condition(StockItem stock, Area area) {
        Condition all = stock.condition();
        Length crook = all.crookOf(area.length(), stock.length());
        // A strip no wider than its crook has next to no straight wood, and the crook of a board is less than its
        // width.
        Length most = area.width().minus(Length.ofNanometres(1));
        return new Condition(
                all.bowOf(area.length(), stock.length()),
                crook.isMoreThan(most) ? most : crook,
                null,
                area.y0().isZero() ? all.straightEdge() : null);
    }

    private static List<Zone> missing(Job job, StockItem stock) {
        Length farTrim = stock.trimIn(shopTrim(job, stock)).farEdgeOrZero();
        return Taper.steps(stock, farTrim, List.of());
    }

    private static List<Zone> joined(List<Zone> zones, List<Zone> more) {
        List<Zone> all = new ArrayList<>(zones);
        all.addAll(more);
        return all;
    }

    private static Trim shopTrim(Job job, StockItem stock) {
        return stock.form() == Form.BOARD ? job.shop().boardTrim() : job.shop().sheetTrim();
    }

    private static Trim trim(Job job, StockItem stock, Area area) {
        Trim old = stock.trimIn(shopTrim(job, stock));
        boolean said = stock.ownTrim() != null;
        return new Trim(
                side(area.x0().isZero(), old.start(), said),
                side(area.x1().equals(stock.length()), old.end(), said),
                side(area.y0().isZero(), old.edge(), said),
                side(area.y1().equals(stock.width()), old.farEdge(), said));
    }

    /** The shop's 0 says only that nothing is trimmed, an entry's own 0 that the side is good. */
    private static @Nullable Length side(boolean raw, @Nullable Length trim, boolean said) {
        if (!raw) {
            return Length.ZERO;
        }
        return trim != null && trim.isZero() && !said ? null : trim;
    }

    private static List<Zone> zonesOn(Area area, List<Zone> zones, StockItem stock) {
        List<Zone> moved = new ArrayList<>();
        for (Zone zone : zones) {
            Area seen = area(zone, stock).within(area);
            if (!seen.isEmpty()) {
                moved.add(new Zone(
                        seen.x0().minus(area.x0()),
                        seen.x1().minus(area.x0()),
                        zone.fromEdge() == null ? null : seen.y0().minus(area.y0()),
                        zone.toEdge() == null ? null : seen.y1().minus(area.y0()),
                        zone.severity(),
                        zone.face(),
                        zone.metal()));
            }
        }
        return moved;
    }

    static Area area(Zone zone, StockItem stock) {
        Length fromEdge = zone.fromEdge();
        Length toEdge = zone.toEdge();
        return new Area(
                zone.from(),
                fromEdge == null ? Length.ZERO : fromEdge,
                zone.to(),
                toEdge == null ? stock.width() : toEdge);
    }

    /** True if the trims leave something of it. */
    public static boolean isUsable(Job job, StockItem.OnHand item) {
        Trim trim = item.trimIn(shopTrim(job, item));
        return trim.startOrZero().plus(trim.endOrZero()).isLessThan(item.length())
                && trim.edgeOrZero().plus(trim.farEdgeOrZero()).isLessThan(item.width());
    }
}
