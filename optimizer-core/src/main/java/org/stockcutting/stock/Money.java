package org.stockcutting.stock;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;

/**
 * An amount of money, always in whole minor units of its currency (ISO 4217).
 *
 * @param amount scale equals the currency's number of minor digits
 * @param currency the currency
 */
public record Money(BigDecimal amount, Currency currency) implements Comparable<Money> {

    public Money {
        amount = amount.setScale(currency.getDefaultFractionDigits(), RoundingMode.UNNECESSARY);
    }

    /** Rounds half up to the minor unit: the one place where a price is rounded. */
    public static Money rounded(BigDecimal amount, Currency currency) {
        return new Money(amount.setScale(currency.getDefaultFractionDigits(), RoundingMode.HALF_UP), currency);
    }

    public static Money ofMinor(long minorUnits, Currency currency) {
        return new Money(BigDecimal.valueOf(minorUnits, currency.getDefaultFractionDigits()), currency);
    }

    public long minorUnits() {
        return amount.unscaledValue().longValueExact();
    }

    public Money times(long factor) {
        return new Money(amount.multiply(BigDecimal.valueOf(factor)), currency);
    }

    public Money plus(Money other) {
        if (!currency.equals(other.currency)) {
            throw new IllegalArgumentException("cannot add " + other + " to " + this + ": one currency a job");
        }
        return new Money(amount.add(other.amount), currency);
    }

    @Override
    public int compareTo(Money other) {
        return amount.compareTo(other.amount);
    }

    @Override
    public String toString() {
        return amount.toPlainString() + " " + currency.getCurrencyCode();
    }
}
