package org.stockcutting.plan;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.Money;

/**
 * One line of the buying list.
 *
 * @param stock id of the stock
 * @param quantity how many to buy
 * @param price price of one piece, rounded half up once; null where the job has no price for it
 * @param total price times quantity, or null
 * @param boardFeet board feet of all of them by nominal sizes where there are, two decimals; null for sheets
 */
public record BuyingLine(
        String stock,
        int quantity,
        @Nullable Money price,
        @Nullable Money total,
        @Nullable BigDecimal boardFeet) {}
