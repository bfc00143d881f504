package org.stockcutting.plan;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.Money;

/**
 * One line of the buying list.
 *
 * @param stock id of the stock
 * @param quantity how many pieces to buy
 * @param price price of one piece, or of one pack where it is sold in packs, rounded half up once; null where the job has no price for
 *     it
 * @param total what all of them cost, or null
 * @param boardFeet board feet of all of them by nominal sizes where there are, two decimals; null for sheets
 * @param lot how many of them are cut, and how they are sold
 */
public record BuyingLine(
        String stock,
        int quantity,
        @Nullable Money price,
        @Nullable Money total,
        @Nullable BigDecimal boardFeet,
        Lot lot) {

    /** A line of pieces that are sold singly at one price and all cut. */
    public BuyingLine(
            String stock, int quantity, @Nullable Money price, @Nullable Money total, @Nullable BigDecimal boardFeet) {
        this(stock, quantity, price, total, boardFeet, new Lot(quantity, 1, 0, 0));
    }

    /**
     * How the pieces of a line are sold.
     *
     * @param used how many of them are cut; the others stay whole
     * @param pack pieces in one pack, 1 where they are sold singly
     * @param breakFrom quantity from which the price holds; 0 for the entry's own
     * @param more how many more could be had for the same money
     */
    public record Lot(int used, int pack, int breakFrom, int more) {}
}
