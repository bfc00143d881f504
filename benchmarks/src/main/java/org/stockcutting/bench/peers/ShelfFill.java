package org.stockcutting.bench.peers;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;

/**
 * A sheet that is filled by shelves: first-fit and best-fit decreasing height (Coffman, Garey, Johnson, Tarjan, SIAM Journal on Computing
 * 9, 1980). Shelves run along the sheet; a new one is as low as its first piece can lie. Sheets with bad zones take nothing.
 */
final class ShelfFill extends Fill {

    private final Choice choice;
    private final long kerfX;
    private final long kerfY;
    private final List<Shelf> shelves = new ArrayList<>();
    private long used;

    /** A row of pieces. */
    static final class Shelf {
        final long height;
        final List<Piece> pieces = new ArrayList<>();
        private long used;

        Shelf(long height) {
            this.height = height;
        }
    }

    record Piece(int item, boolean turned) {}

    /** Where an item would go; {@code shelf} is null for a new one. */
    private record Spot(int shelf, boolean turned, long slack) {}

    private static final Spot NOWHERE = new Spot(-1, false, -1);

    ShelfFill(Instance instance, int stock, Choice choice) {
        super(instance, stock);
        this.choice = choice;
        this.kerfX = instance.crosscutKerf();
        this.kerfY = instance.ripKerf();
    }

    /** Height of the lowest shelf that the item can open on any stock. */
    static long leastHeight(Instance instance, int item) {
        ItemType type = instance.items().get(item);
        long least = Long.MAX_VALUE;
        for (StockType stock : instance.stocks()) {
            StockType.Placing place = stock.places().get(item);
            long width = type.width() == 0 ? stock.width() : type.width();
            if (place.straight()) {
                least = Math.min(least, width);
            }
            if (place.turned()) {
                least = Math.min(least, type.length());
            }
        }
        return least;
    }

    List<Shelf> shelves() {
        return shelves;
    }

    @Override
    long room(int item) {
        return spot(item).slack();
    }

    @Override
    void put(int item) {
        Spot spot = spot(item);
        Shelf shelf;
        if (spot.shelf() < shelves.size()) {
            shelf = shelves.get(spot.shelf());
        } else {
            shelf = new Shelf(extent(item, !spot.turned()));
            shelves.add(shelf);
            used += shelf.height + kerfY;
        }
        shelf.pieces.add(new Piece(item, spot.turned()));
        shelf.used += extent(item, spot.turned()) + kerfX;
    }

    /** Extent along the sheet if the flag is the item's own turn, across if it is the opposite. */
    private long extent(int item, boolean turned) {
        return turned ? width(item) : instance.items().get(item).length();
    }

    private Spot spot(int item) {
        if (!type().zones().isEmpty()) {
            return NOWHERE;
        }
        Spot best = NOWHERE;
        for (int s = 0; s < shelves.size(); s++) {
            Spot here = onShelf(item, s);
            if (here.slack() >= 0 && (best.slack() < 0 || here.slack() < best.slack())) {
                best = here;
                if (choice == Choice.FIRST) {
                    return best;
                }
            }
        }
        return best.slack() >= 0 ? best : onNewShelf(item);
    }

    /** The shorter way round that fits: it leaves more of the shelf. */
    private Spot onShelf(int item, int index) {
        Shelf shelf = shelves.get(index);
        Spot best = NOWHERE;
        for (boolean turned : new boolean[] {false, true}) {
            long left = type().length() + kerfX - shelf.used - extent(item, turned) - kerfX;
            if (allows(item, turned) && left >= 0 && extent(item, !turned) <= shelf.height && left > best.slack()) {
                best = new Spot(index, turned, left);
            }
        }
        return best;
    }

    private Spot onNewShelf(int item) {
        Spot best = NOWHERE;
        for (boolean turned : new boolean[] {false, true}) {
            long left = type().width() + kerfY - used - extent(item, !turned) - kerfY;
            boolean fits = left >= 0 && extent(item, turned) <= type().length();
            if (allows(item, turned) && fits && left > best.slack()) {
                best = new Spot(shelves.size(), turned, left);
            }
        }
        return best.slack() < 0 ? NOWHERE : best;
    }

    private boolean allows(int item, boolean turned) {
        StockType.Placing place = type().places().get(item);
        return turned ? place.turned() : place.straight();
    }

    @Override
    Region layout() {
        List<Region> rows = new ArrayList<>();
        long y = 0;
        for (Shelf shelf : shelves) {
            List<Region> columns = new ArrayList<>();
            long x = 0;
            for (Piece piece : shelf.pieces) {
                long length = extent(piece.item(), piece.turned());
                Region item = new Region.Item(
                        piece.item(), piece.turned(), x, y, length, extent(piece.item(), !piece.turned()));
                columns.add(new Region.Split(false, x, y, length, shelf.height, List.of(item)));
                x += length + kerfX;
            }
            rows.add(new Region.Split(true, 0, y, type().length(), shelf.height, columns));
            y += shelf.height + kerfY;
        }
        return new Region.Split(false, 0, 0, type().length(), type().width(), rows);
    }
}
