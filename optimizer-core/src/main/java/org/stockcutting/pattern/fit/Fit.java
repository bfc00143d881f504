package org.stockcutting.pattern.fit;

import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Part;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * Whether one rough piece can come from one piece of stock: material, section, length and width inside the trims, grain, clear wood.
 * Saw limits and neighbours are not looked at here.
 */
public final class Fit {

    private final ShopRules shop;

    public Fit(ShopRules shop) {
        this.shop = shop;
    }

    /** The ways a piece may lie. */
    public record Ways(boolean straight, boolean turned) {
        public static final Ways NONE = new Ways(false, false);

        public boolean any() {
            return straight || turned;
        }
    }

    /** How the piece may lie on this stock, everything considered. */
    public Ways ways(RoughPiece piece, StockItem stock) {
        if (!materialFits(piece, stock) || !sectionFits(piece, stock) || isTooLongToBuy(stock)) {
            return Ways.NONE;
        }
        Ways bySize = waysBySize(piece, stock);
        Ways byGrain = waysByGrain(piece, stock);
        boolean straight = bySize.straight() && byGrain.straight() && hasClearPlace(piece, stock, false);
        boolean turned = bySize.turned() && byGrain.turned() && hasClearPlace(piece, stock, true);
        return new Ways(straight, turned);
    }

    /** Material and grade. */
    public boolean materialFits(RoughPiece piece, StockItem stock) {
        return piece.part().material().equals(stock.material())
                && piece.part().selection().takes(stock.grade())
                && piece.part().selection().takesFrom(stock.id());
    }

    /** Trade size or thickness; width is a matter of size. */
    public boolean sectionFits(RoughPiece piece, StockItem stock) {
        if (piece.section() instanceof RoughSection.AsItComes asItComes) {
            return stock.nominal() != null && Objects.equals(stock.nominal().name(), asItComes.nominal());
        }
        RoughSection.Sized sized = (RoughSection.Sized) piece.section();
        Length difference = stock.thickness().minus(sized.thickness());
        if (sized.planed()) {
            // Planing takes the bow out first; what is not planed stays bowed.
            Length flat = difference.minus(stock.condition().bowOf(piece.length(), stock.length()));
            return !flat.isNegative() && !difference.isMoreThan(shop.maxPlaning());
        }
        Length tolerance = shop.thicknessTolerance();
        return !difference.isMoreThan(tolerance) && !difference.isLessThan(Length.ZERO.minus(tolerance));
    }

    /** Stock for sale that is longer than the car takes is not bought. */
    public boolean isTooLongToBuy(StockItem stock) {
        return shop.carLength() != null
                && stock instanceof StockItem.ForSale
                && stock.length().isMoreThan(shop.carLength());
    }

    /** The ways in which the piece is small enough for the usable area, grain left aside. */
    public Ways waysBySize(RoughPiece piece, StockItem stock) {
        UsableArea area = UsableArea.of(stock, shop);
        Length width = widthOn(piece, area);
        boolean straight = !piece.length().isMoreThan(area.length())
                && !width.plus(lostWidth(piece, stock, piece.length())).isMoreThan(area.width());
        boolean turned = piece.section() instanceof RoughSection.Sized
                && !piece.length().plus(lostWidth(piece, stock, width)).isMoreThan(area.width())
                && !width.isMoreThan(area.length());
        return new Ways(straight, turned);
    }

    /** What the board's crook takes from the width of a piece that is ripped from it and reaches so far along it. */
    public static Length lostWidth(RoughPiece piece, StockItem stock, Length along) {
        return piece.section() instanceof RoughSection.Sized
                ? stock.condition().crookOf(along, stock.length())
                : Length.ZERO;
    }

    /** The ways that the grain of part and stock allow. */
    public Ways waysByGrain(RoughPiece piece, StockItem stock) {
        Grain own = grainOf(piece, stock);
        return new Ways(own.allowsStraight(stock.grain()), own.allowsTurned(stock.grain()));
    }

    /** A part that says nothing has its grain along its length wherever the stock has an axis. */
    static Grain grainOf(RoughPiece piece, StockItem stock) {
        Grain asked = piece.part().grain();
        if (asked != null) {
            return asked;
        }
        return stock.grain() == Grain.ANY ? Grain.ANY : Grain.LENGTH;
    }

    /** Rough width of the piece on this stock; stock taken as it comes gives its full usable width. */
    public static Length widthOn(RoughPiece piece, UsableArea area) {
        return piece.section() instanceof RoughSection.Sized sized ? sized.width() : area.width();
    }

    /** True if the piece alone can lie somewhere without a zone it does not take. */
    public boolean hasClearPlace(RoughPiece piece, StockItem stock, boolean turned) {
        if (stock.zones().isEmpty() && stock.condition().isFullWidth()) {
            return true;
        }
        UsableArea area = UsableArea.of(stock, shop);
        Length width = widthOn(piece, area);
        Length dx = turned ? width : piece.length();
        Length dy = turned ? piece.length() : width;
        TreeSet<Length> xs = new TreeSet<>();
        TreeSet<Length> ys = new TreeSet<>();
        xs.add(area.x0());
        ys.add(area.y0());
        for (Zone zone : zones(stock)) {
            xs.add(zone.to());
            if (zone.toEdge() != null) {
                ys.add(zone.toEdge());
            }
        }
        for (Length x : xs) {
            for (Length y : ys) {
                boolean inside =
                        isInside(area, x, y, dx, dy) && isOnWood(piece, stock, area, x.plus(dx), y.plus(dy), dx);
                if (inside && isClear(piece, stock, x, y, dx, dy)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** True if the piece can lie straight with its corner there, everything but its neighbours considered. */
    public boolean isPlaceFor(RoughPiece piece, StockItem stock, Length x, Length y) {
        UsableArea area = UsableArea.of(stock, shop);
        Length width = widthOn(piece, area);
        return ways(piece, stock).straight()
                && isInside(area, x, y, piece.length(), width)
                && isOnWood(piece, stock, area, x.plus(piece.length()), y.plus(width), piece.length())
                && isClear(piece, stock, x, y, piece.length(), width);
    }

    private static boolean isInside(UsableArea area, Length x, Length y, Length dx, Length dy) {
        return !x.isLessThan(area.x0())
                && !y.isLessThan(area.y0())
                && !x.plus(dx).isMoreThan(area.x1())
                && !y.plus(dy).isMoreThan(area.y1());
    }

    /** True if the far corner lies within the slanting edge of a tapered board, the crook of the piece allowed for. */
    private static boolean isOnWood(
            RoughPiece piece, StockItem stock, UsableArea area, Length x1, Length y1, Length along) {
        Length farTrim = stock.width().minus(area.y1());
        Length needed = y1.plus(farTrim).plus(lostWidth(piece, stock, along));
        return !needed.isMoreThan(stock.condition().widthAt(x1, stock));
    }

    /** Bad zones of the stock with their margins. */
    public List<Zone> zones(StockItem stock) {
        return shop.zonesOf(stock);
    }

    /** True if the part may contain the zone. */
    public static boolean takes(Part part, Zone zone) {
        return zone.isAcceptableFor(part.woodClass(), part.selection().goodFaceOnly());
    }

    private boolean isClear(RoughPiece piece, StockItem stock, Length x, Length y, Length dx, Length dy) {
        for (Zone zone : zones(stock)) {
            Length fromEdge = zone.fromEdge() == null ? Length.ZERO : zone.fromEdge();
            Length toEdge = zone.toEdge() == null ? stock.width() : zone.toEdge();
            boolean overlaps = zone.from().isLessThan(x.plus(dx))
                    && x.isLessThan(zone.to())
                    && fromEdge.isLessThan(y.plus(dy))
                    && y.isLessThan(toEdge);
            if (overlaps && !takes(piece.part(), zone)) {
                return false;
            }
        }
        return true;
    }
}
