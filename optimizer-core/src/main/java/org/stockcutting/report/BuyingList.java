package org.stockcutting.report;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.stockcutting.job.Goal;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Purchase;
import org.stockcutting.stock.StockItem;

/** How many of which stock to buy: one line a stock id, sorted; what is on hand does not show. */
final class BuyingList {

    private BuyingList() {}

    static List<BuyingLine> of(Lookup lookup, List<Layout> layouts) {
        Map<String, Integer> quantities = new TreeMap<>();
        for (Layout layout : layouts) {
            if (lookup.stock(layout.stock()) instanceof StockItem.ForSale) {
                quantities.merge(layout.stock(), layout.repeat(), Math::addExact);
            }
        }
        boolean fewest = lookup.job().goal() == Goal.BOARDS;
        return quantities.entrySet().stream()
                .map(entry -> line((StockItem.ForSale) lookup.stock(entry.getKey()), entry.getValue(), fewest))
                .toList();
    }

    private static BuyingLine line(StockItem.ForSale item, int used, boolean fewest) {
        Purchase bought = Bill.purchase(item, used, fewest);
        return new BuyingLine(
                item.id(),
                bought.pieces(),
                bought.each(),
                bought.total(),
                item.form() == Form.SHEET ? null : Bill.boardFeet(item, bought.pieces()),
                new BuyingLine.Lot(
                        used, item.offer().pack(), bought.breakFrom(), Math.max(0, bought.most() - bought.pieces())));
    }
}
