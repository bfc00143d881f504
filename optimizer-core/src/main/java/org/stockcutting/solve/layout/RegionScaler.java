package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.ShopRules;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.stock.StockItem;

/**
 * Brings an engine's region from instance units into raw nanometres. Every place gets the real size of its piece. On boards without
 * zones everything is pushed together towards the origin, which takes out what rounding to units had added and leaves larger leftovers; on
 * boards with zones every place stays where the engine put it. Where a saw limit forbids that, everything is cut as the engine had it, the
 * rest around each place too.
 */
final class RegionScaler {

    private final UsableArea area;
    private final boolean pushed;
    private final boolean asCut;
    private final long rawX;
    private final long rawY;
    private final long kerfX;
    private final long kerfY;
    private final long unitX;
    private final long unitY;
    private final List<RoughPiece> pieceOfItem;

    RegionScaler(StockItem stock, ShopRules shop, long unitX, long unitY, List<RoughPiece> pieceOfItem, boolean asCut) {
        this.area = UsableArea.of(stock, shop);
        this.asCut = asCut;
        this.rawX = stock.length().nanometres();
        this.rawY = stock.width().nanometres();
        this.pushed = stock.zones().isEmpty() && stock.condition().isFullWidth() && !asCut;
        this.kerfX = shop.kerf().crosscut().nanometres();
        this.kerfY = shop.kerf().rip().nanometres();
        this.unitX = unitX;
        this.unitY = unitY;
        this.pieceOfItem = pieceOfItem;
    }

    Region scale(Region region) {
        return pushed ? push(region, area.x0().nanometres(), area.y0().nanometres()) : stretch(region);
    }

    private Region stretch(Region region) {
        long x = area.x0().nanometres() + region.x() * unitX;
        long y = area.y0().nanometres() + region.y() * unitY;
        if (region instanceof Region.Item item) {
            return place(item, x, y);
        }
        Region.Split split = (Region.Split) region;
        List<Region> parts = new ArrayList<>();
        for (Region part : split.parts()) {
            parts.add(stretch(part));
        }
        return asCut
                ? new Region.Split(
                        split.crosscut(),
                        x,
                        y,
                        toRawEnd(x + split.length() * unitX, area.x1().nanometres(), rawX) - x,
                        toRawEnd(y + split.width() * unitY, area.y1().nanometres(), rawY) - y,
                        parts)
                : new Region.Split(split.crosscut(), x, y, extent(parts, true) - x, extent(parts, false) - y, parts);
    }

    /** Whatever lies in a strip trims its own raw end, if it reaches it. */
    private static long toRawEnd(long end, long usable, long raw) {
        return end == usable ? raw : end;
    }

    private Region push(Region region, long x, long y) {
        if (region instanceof Region.Item item) {
            return place(item, x, y);
        }
        Region.Split split = (Region.Split) region;
        List<Region> parts = new ArrayList<>();
        long atX = x;
        long atY = y;
        for (Region part : split.parts()) {
            Region placed = push(part, atX, atY);
            parts.add(placed);
            if (split.crosscut()) {
                atX = placed.x() + placed.length() + kerfX;
            } else {
                atY = placed.y() + placed.width() + kerfY;
            }
        }
        return new Region.Split(split.crosscut(), x, y, extent(parts, true) - x, extent(parts, false) - y, parts);
    }

    /** Far end of the parts along x or y. */
    private static long extent(List<Region> parts, boolean alongX) {
        return parts.stream()
                .mapToLong(part -> alongX ? part.x() + part.length() : part.y() + part.width())
                .max()
                .orElseThrow(() -> new IllegalStateException("a split without parts"));
    }

    private Region.Item place(Region.Item item, long x, long y) {
        RoughPiece piece = pieceOfItem.get(item.item());
        long length = piece.length().nanometres();
        long width = Fit.widthOn(piece, area).nanometres();
        return new Region.Item(
                item.item(), item.turned(), x, y, item.turned() ? width : length, item.turned() ? length : width);
    }
}
