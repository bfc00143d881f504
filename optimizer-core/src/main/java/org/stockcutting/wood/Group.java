package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.SortedMap;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/**
 * Parts that share wood, with the wood.
 *
 * @param number place among the groups, from 0
 * @param pieces rough pieces
 * @param bought stock that the plan buys, by id
 * @param quantities how many of each
 * @param owned boards on hand that could serve
 * @param layouts the plan's layouts
 */
record Group(
        int number,
        List<RoughPiece> pieces,
        List<StockItem.ForSale> bought,
        List<Integer> quantities,
        List<StockItem.OnHand> owned,
        List<Layout> layouts) {

    static Group of(
            int number,
            List<RoughPiece> pieces,
            SortedMap<String, StockItem.ForSale> bought,
            SortedMap<String, Integer> quantities,
            List<StockItem.OnHand> owned,
            List<Layout> layouts) {
        List<Integer> counts = new ArrayList<>();
        bought.keySet().forEach(id -> counts.add(quantities.getOrDefault(id, 0)));
        return new Group(
                number,
                List.copyOf(pieces),
                List.copyOf(bought.values()),
                List.copyOf(counts),
                List.copyOf(owned),
                List.copyOf(layouts));
    }

    int needed() {
        return quantities.stream().mapToInt(Integer::intValue).sum();
    }

    /**
     * Index of the stock of which more are taken: the longest that can still be had, else the longest; of equal lengths that whose grade serves
     * most kinds of pieces.
     */
    int extra() {
        int best = 0;
        for (int k = 1; k < bought.size(); k++) {
            int length = bought.get(k).length().compareTo(bought.get(best).length());
            boolean longer = length > 0 || (length == 0 && served(k) > served(best));
            if (spare(k) > 0 && (longer || spare(best) == 0)) {
                best = k;
            }
        }
        return best;
    }

    private long served(int kind) {
        return pieces.stream()
                .filter(piece -> piece.part().selection().takes(bought.get(kind).grade())
                        && piece.part().selection().takesFrom(bought.get(kind).id()))
                .count();
    }

    /** How many more of it can be had. */
    int spare(int kind) {
        OptionalInt copies = bought.get(kind).copies();
        return copies.isEmpty() ? Integer.MAX_VALUE : copies.getAsInt() - quantities.get(kind);
    }

    /** The kinds of all boards in the order in which they are bought, some of them beyond the plan. */
    List<Integer> purchase(int more) {
        List<Integer> kinds = new ArrayList<>();
        for (int k = 0; k < bought.size(); k++) {
            for (int i = 0; i < quantities.get(k); i++) {
                kinds.add(k);
            }
        }
        int extra = extra();
        for (int i = 0; i < more; i++) {
            kinds.add(extra);
        }
        return kinds;
    }
}
