package org.stockcutting.plan;

import java.util.List;
import org.stockcutting.stock.Money;

/**
 * What fewer set-ups cost. Every row is a plan that the checker has accepted and that no other row beats in both; that there is no better
 * row is not claimed.
 *
 * @param rows dearest last: each costs more than the one before and has fewer set-ups
 */
public record TradeOff(List<Row> rows) {

    /** Nothing was asked about set-ups. */
    public static final TradeOff NONE = new TradeOff(List.of());

    public TradeOff {
        rows = List.copyOf(rows);
    }

    /**
     * One plan.
     *
     * @param cost money paid for stock
     * @param setUps how often a stop or fence is moved
     * @param chosen true for the plan that is returned: that with the least cost and set-ups together
     */
    public record Row(Money cost, int setUps, boolean chosen) {

        /** Cost, with so much for each set-up. */
        public Money withSetUps(Money price) {
            return cost.plus(price.times(setUps));
        }
    }
}
