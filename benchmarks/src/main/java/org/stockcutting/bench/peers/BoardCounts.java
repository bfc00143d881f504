package org.stockcutting.bench.peers;

import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;

/** How many boards of each stock a model needs to offer: as many as there are, but no more than a plan cheaper than the greedy one can use. */
final class BoardCounts {

    private BoardCounts() {}

    static int[] of(Instance instance, Load greedy) {
        int pieces = instance.items().stream().mapToInt(i -> i.demand()).sum();
        int[] counts = new int[instance.stocks().size()];
        for (int s = 0; s < counts.length; s++) {
            StockType stock = instance.stocks().get(s);
            long most = stock.copies() == StockType.UNLIMITED ? pieces : Math.min(pieces, stock.copies());
            if (greedy.isComplete() && stock.cost() > 0) {
                most = Math.min(most, greedy.cost() / stock.cost());
            }
            counts[s] = (int) most;
        }
        return counts;
    }
}
