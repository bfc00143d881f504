package org.stockcutting.stock;

import java.math.BigDecimal;
import java.util.Currency;

/**
 * What a seller asks, before it is applied to a size.
 *
 * @param amount at least 0, any number of decimals
 * @param currency ISO 4217
 * @param per what the amount is for
 */
public record Price(BigDecimal amount, Currency currency, PriceUnit per) {}
