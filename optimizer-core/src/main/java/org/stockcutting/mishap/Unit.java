package org.stockcutting.mishap;

import java.util.List;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/**
 * A piece of wood in hand for which cuts are still planned.
 *
 * @param stock the piece, as stock on hand of the job that is left
 * @param layout how it was going to be cut, in its own coordinates and the names of the job that is left
 * @param spares places of pieces in the layout that are spares: their numbers are not yet given
 */
public record Unit(StockItem.OnHand stock, Layout layout, List<Integer> spares) {

    public Unit {
        spares = List.copyOf(spares);
    }

    public String id() {
        return stock.id();
    }
}
