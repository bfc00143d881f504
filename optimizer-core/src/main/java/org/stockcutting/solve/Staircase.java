package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Goal;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.Purchase;
import org.stockcutting.stock.StockItem;

/**
 * What so many boards of an entry come to that is sold in packs or has price breaks: not so many times what one costs, but a staircase.
 *
 * @param item the entry
 * @param goal cost, counted in minor units, or boards
 */
record Staircase(StockItem.ForSale item, Goal goal) {

    /** No price at which more than the free boards can be had. */
    static final long NONE = -1;

    /**
     * One way to buy: a sum is paid, so many boards are there for it, and more are had at a price each or not at all. Of several ways the
     * cheapest is what boards come to.
     *
     * @param paid paid in any case
     * @param free boards that are paid with that
     * @param more price of each board beyond these, or {@link #NONE}
     */
    record Way(long paid, int free, long more) {}

    /** True if what this entry comes to under the goal is no plain multiple. */
    static boolean isOne(StockItem item, Goal goal) {
        if (!(item instanceof StockItem.ForSale sold) || goal == Goal.WASTE) {
            return false;
        }
        return goal == Goal.BOARDS ? sold.offer().pack() > 1 : sold.offer().isStaircase();
    }

    /** What so many cut boards come to, in minor units or in boards bought. */
    long paid(int boards) {
        Purchase purchase = Bill.purchase(item, boards, goal == Goal.BOARDS);
        Money total = purchase.total();
        return goal == Goal.BOARDS ? purchase.pieces() : total == null ? 0 : total.minorUnits();
    }

    /** The least that one of at most so many boards can come to, rounded down. Where whole packs are cut up, or all boards at once. */
    long least(int most) {
        int boards = Math.max(1, available(most));
        int full = boards - boards % item.offer().pack();
        long least = paid(boards) / boards;
        return full == 0 ? least : Math.min(least, paid(full) / full);
    }

    /** Every way to buy at most so many boards, dearer and larger ones behind. */
    List<Way> ways(int most) {
        return item.offer().pack() > 1 ? packs(available(most)) : tiers();
    }

    private int available(int most) {
        return Math.min(most, item.copies().orElse(Integer.MAX_VALUE));
    }

    private List<Way> packs(int most) {
        List<Way> ways = new ArrayList<>();
        int pack = item.offer().pack();
        for (int boards = 0; boards < most + pack && boards <= available(Integer.MAX_VALUE); boards += pack) {
            long paid = paid(boards);
            if (!ways.isEmpty() && ways.get(ways.size() - 1).paid() == paid) {
                ways.remove(ways.size() - 1);
            }
            ways.add(new Way(paid, boards, NONE));
        }
        return ways;
    }

    /** Each price with the quantity that opens it: this many are paid, and more cost that price too. */
    private List<Way> tiers() {
        List<Way> ways = new ArrayList<>();
        ways.add(new Way(0, 0, Bill.price(item).minorUnits()));
        for (Offer.Break step : item.offer().breaks()) {
            if (step.from() <= available(Integer.MAX_VALUE)) {
                StockItem.ForSale alone =
                        item.withOffer(new Offer(1, List.of(step), item.offer().premiums()));
                Money each = Bill.purchase(alone, step.from(), true).each();
                long price = each == null ? 0 : each.minorUnits();
                ways.add(new Way(Math.multiplyExact(price, step.from()), step.from(), price));
            }
        }
        return ways;
    }
}
