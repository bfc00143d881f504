package org.stockcutting.job;

import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.Money;

/**
 * Having the wood brought.
 *
 * @param price what it costs
 * @param freeFrom material for at least so much is brought for nothing, or null if it never is
 */
public record Delivery(Money price, @Nullable Money freeFrom) {}
