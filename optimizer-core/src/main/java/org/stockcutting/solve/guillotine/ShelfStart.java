package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * First-fit decreasing height on shelves that run along the board: Coffman, Garey, Johnson, Tarjan, SIAM Journal on Computing 9 (1980).
 * The plainest start. It leaves aside boards with zones and jobs with sets, and gives nothing where a limit forbids its layouts.
 */
final class ShelfStart {

    /** Shelves are looked through one by one, so very large jobs are left to the other starts. */
    private static final int MOST_PIECES = 2_000;

    private final Yard yard;
    private final Model model;
    private final int stock;
    private final List<Pile> piles = new ArrayList<>();

    private static final class Shelf {
        private final long height;
        private final List<Cell> columns = new ArrayList<>();
        private long used;

        Shelf(long height) {
            this.height = height;
        }
    }

    private static final class Pile {
        private final List<Shelf> shelves = new ArrayList<>();
        private final int[] counts;
        private long used;

        Pile(int types) {
            counts = new int[types];
        }
    }

    private ShelfStart(Yard yard, int stock) {
        this.yard = yard;
        this.model = yard.model;
        this.stock = stock;
    }

    /** A draft on this stock alone, or null where shelves are no good here. */
    static @Nullable Draft on(Yard yard, int stock) {
        Model model = yard.model;
        long demand = model.instance.items().stream().mapToLong(i -> i.demand()).sum();
        if (model.hasZones(stock) || !model.instance.groups().isEmpty() || demand > MOST_PIECES) {
            return null;
        }
        return new ShelfStart(yard, stock).build();
    }

    private @Nullable Draft build() {
        List<Cell> pieces = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            if (model.hasPlace(stock, t)) {
                boolean turned = lies(t);
                Cell piece = Cell.piece(t, turned, model.length(stock, t, turned), model.width(stock, t, turned));
                for (int n = 0; n < model.item(t).demand(); n++) {
                    pieces.add(piece);
                }
            }
        }
        pieces.sort(Comparator.comparingLong((Cell c) -> -c.width).thenComparingLong(c -> -c.length));
        Draft draft = new Draft(yard);
        for (Cell piece : pieces) {
            put(piece, draft.available(stock));
        }
        for (Pile pile : piles) {
            Cell root = cell(pile);
            if (!yard.allows(stock, root)) {
                return null;
            }
            draft.add(new Board(yard, stock, root));
        }
        return draft;
    }

    /** Turned if that makes the shelf lower. */
    private boolean lies(int t) {
        return model.allows(stock, t, true)
                && (!model.allows(stock, t, false) || model.width(stock, t, true) < model.width(stock, t, false));
    }

    private void put(Cell piece, int most) {
        for (Pile pile : piles) {
            if (pile.counts[piece.type()] < model.item(piece.type()).perBoard() && putOn(pile, piece)) {
                return;
            }
        }
        if (piles.size() < most) {
            Pile pile = new Pile(model.types);
            if (putOn(pile, piece)) {
                piles.add(pile);
            }
        }
    }

    private boolean putOn(Pile pile, Cell piece) {
        yard.count(4L + 4L * pile.shelves.size());
        for (Shelf shelf : pile.shelves) {
            if (shelf.used + piece.length <= model.boardLength(stock) && piece.width <= shelf.height) {
                add(pile, shelf, piece);
                return true;
            }
        }
        if (pile.used + piece.width > model.boardWidth(stock)) {
            return false;
        }
        Shelf shelf = new Shelf(piece.width);
        pile.shelves.add(shelf);
        pile.used += piece.width;
        add(pile, shelf, piece);
        return true;
    }

    private static void add(Pile pile, Shelf shelf, Cell piece) {
        shelf.columns.add(piece);
        shelf.used += piece.length;
        pile.counts[piece.type()]++;
    }

    private Cell cell(Pile pile) {
        long length = model.boardLength(stock);
        List<Cell> rows = new ArrayList<>();
        for (Shelf shelf : pile.shelves) {
            List<Cell> columns = new ArrayList<>();
            for (Cell piece : shelf.columns) {
                columns.add(closed(false, piece.length, shelf.height, List.of(piece), piece.width));
            }
            rows.add(closed(true, length, shelf.height, columns, shelf.used));
        }
        return closed(false, length, model.boardWidth(stock), rows, pile.used);
    }

    private Cell closed(boolean crosscut, long length, long width, List<Cell> parts, long used) {
        List<Cell> all = new ArrayList<>(parts);
        long rest = (crosscut ? length : width) - used;
        if (rest > 0) {
            all.add(crosscut ? Cell.rest(rest, width) : Cell.rest(length, rest));
        }
        return Cell.join(crosscut, length, width, all, yard.order(stock));
    }
}
