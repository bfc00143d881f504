package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/**
 * First-fit decreasing height on one kind of unlimited board, in its plainest form: Coffman, Garey, Johnson, Tarjan, SIAM Journal on
 * Computing 9 (1980). Pieces lie straight where they may.
 */
public final class Shelves {

    private Shelves() {}

    /** How many boards it takes. */
    public static int boards(Instance instance) {
        StockType stock = instance.stocks().get(0);
        long kerfX = instance.crosscutKerf();
        long kerfY = instance.ripKerf();
        List<long[]> pieces = new ArrayList<>();
        for (int t = 0; t < instance.items().size(); t++) {
            ItemType item = instance.items().get(t);
            boolean straight = stock.places().get(t).straight();
            for (int n = 0; n < item.demand(); n++) {
                pieces.add(
                        straight
                                ? new long[] {item.length() + kerfX, item.width() + kerfY}
                                : new long[] {item.width() + kerfX, item.length() + kerfY});
            }
        }
        pieces.sort(Comparator.comparingLong(piece -> -piece[1]));
        // A shelf: its board, its height, and what is used of its length.
        List<long[]> shelves = new ArrayList<>();
        List<Long> heights = new ArrayList<>();
        for (long[] piece : pieces) {
            long[] shelf = shelves.stream()
                    .filter(s -> s[1] >= piece[1] && s[2] + piece[0] <= stock.length() + kerfX)
                    .findFirst()
                    .orElse(null);
            if (shelf == null) {
                int board = 0;
                while (board < heights.size() && heights.get(board) + piece[1] > stock.width() + kerfY) {
                    board++;
                }
                if (board == heights.size()) {
                    heights.add(0L);
                }
                heights.set(board, heights.get(board) + piece[1]);
                shelf = new long[] {board, piece[1], 0};
                shelves.add(shelf);
            }
            shelf[2] += piece[0];
        }
        return heights.size();
    }
}
