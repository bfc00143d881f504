package org.stockcutting.check;

import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/**
 * One entry of stock as the inspector sees it.
 *
 * @param item the entry
 * @param raw the whole board
 * @param usable what is left inside the trims
 * @param trim the trim that holds for it
 * @param zones its bad zones, clipped to the board
 * @param barred true if it may not be bought because the car is too short
 */
record Board(StockItem item, Rect raw, Rect usable, Trim trim, List<Bad> zones, boolean barred) {

    /** A bad zone and where it lies. */
    record Bad(Rect rect, Zone zone) {}

    static Board of(StockItem item, ShopRules shop) {
        Trim own = item.ownTrim();
        Trim shops = item.form() == Form.BOARD ? shop.boardTrim() : shop.sheetTrim();
        Trim trim = own != null ? own : Evenness.of(item).goodEdge() ? withoutEdge(shops) : shops;
        long length = item.length().nanometres();
        long width = item.width().nanometres();
        Rect raw = new Rect(0, 0, length, width);
        Rect usable = new Rect(
                amount(trim.start()), amount(trim.edge()), length - amount(trim.end()), width - amount(trim.farEdge()));
        List<Bad> zones = item.zones().stream()
                .map(zone -> new Bad(place(zone, raw), zone))
                .filter(bad -> !bad.rect().isEmpty())
                .toList();
        Length car = shop.carLength();
        boolean barred = item instanceof StockItem.ForSale
                && car != null
                && item.length().isMoreThan(car);
        return new Board(item, raw, usable, trim, zones, barred);
    }

    private static Trim withoutEdge(Trim shops) {
        return new Trim(shops.start(), shops.end(), Length.ZERO, shops.farEdge());
    }

    /** How true it is. */
    Evenness evenness() {
        return Evenness.of(item);
    }

    private static Rect place(Zone zone, Rect raw) {
        Length fromEdge = zone.fromEdge();
        Length toEdge = zone.toEdge();
        return new Rect(
                        zone.from().nanometres(),
                        fromEdge == null ? 0 : fromEdge.nanometres(),
                        zone.to().nanometres(),
                        toEdge == null ? raw.y1() : toEdge.nanometres())
                .intersect(raw);
    }

    static long amount(@Nullable Length length) {
        return length == null ? 0 : length.nanometres();
    }

    String id() {
        return item.id();
    }

    boolean forSale() {
        return item instanceof StockItem.ForSale;
    }

    long thickness() {
        return item.thickness().nanometres();
    }

    Grain grain() {
        return item.grain();
    }

    OptionalInt copies() {
        return item.copies();
    }
}
