package org.stockcutting.check;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.material.NominalSize;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.StockItem;

/**
 * Prices and board feet, worked out again. A board foot is 144 cubic inches of nominal size; wood thinner than an inch counts as an
 * inch (American Softwood Lumber Standard PS 20, tally rules).
 */
final class Tariff {

    private static final BigInteger INCH = BigInteger.valueOf(25_400_000L);
    private static final BigInteger FOOT = BigInteger.valueOf(304_800_000L);
    private static final BigInteger METRE = BigInteger.valueOf(1_000_000_000L);
    private static final BigInteger BOARD_FOOT = INCH.pow(3).multiply(BigInteger.valueOf(144));

    private Tariff() {}

    /** Price of one piece, rounded half up once, or null where there is none. */
    static @Nullable Money price(StockItem.ForSale stock) {
        Price price = stock.price();
        if (price == null) {
            return null;
        }
        BigInteger length = nm(stock.length());
        BigInteger area = length.multiply(nm(billedWidth(stock)));
        BigInteger volume = area.multiply(nm(billedThickness(stock)));
        BigInteger thousand = BigInteger.valueOf(1000);
        BigDecimal exact = switch (price.per()) {
            case PIECE -> ratio(price, BigInteger.ONE, BigInteger.ONE);
            case FOOT -> ratio(price, length, FOOT);
            case METRE -> ratio(price, length, METRE);
            case BOARD_FOOT -> ratio(price, tally(stock), BOARD_FOOT);
            case THOUSAND_BOARD_FEET -> ratio(price, tally(stock), BOARD_FOOT.multiply(thousand));
            case SQUARE_FOOT -> ratio(price, area, FOOT.pow(2));
            case SQUARE_METRE -> ratio(price, area, METRE.pow(2));
            case CUBIC_METRE -> ratio(price, volume, METRE.pow(3));
        };
        return new Money(exact, price.currency());
    }

    private static BigDecimal ratio(Price price, BigInteger size, BigInteger unit) {
        return price.amount()
                .multiply(new BigDecimal(size))
                .divide(new BigDecimal(unit), price.currency().getDefaultFractionDigits(), RoundingMode.HALF_UP);
    }

    /** Board feet of so many pieces, two decimals, half up. */
    static BigDecimal boardFeet(StockItem stock, int quantity) {
        return new BigDecimal(tally(stock).multiply(BigInteger.valueOf(quantity)))
                .divide(new BigDecimal(BOARD_FOOT), 2, RoundingMode.HALF_UP);
    }

    /** Board feet of a volume of this thickness, two decimals, rounded up: so much has to be bought. */
    static BigDecimal boardFeet(BigInteger volume, Length thickness) {
        BigInteger tallied = nm(thickness).max(INCH);
        return new BigDecimal(volume.multiply(tallied))
                .divide(new BigDecimal(BOARD_FOOT.multiply(nm(thickness))), 2, RoundingMode.CEILING);
    }

    /** Price of a volume, rounded half up once. */
    static Money price(Price price, BigInteger volume, BigDecimal boardFeet) {
        BigDecimal exact = switch (price.per()) {
            case BOARD_FOOT -> price.amount().multiply(boardFeet);
            case THOUSAND_BOARD_FEET -> price.amount().multiply(boardFeet).movePointLeft(3);
            default ->
                price.amount()
                        .multiply(new BigDecimal(volume))
                        .divide(
                                new BigDecimal(METRE.pow(3)),
                                price.currency().getDefaultFractionDigits(),
                                RoundingMode.HALF_UP);
        };
        return Money.rounded(exact, price.currency());
    }

    /** Billed volume in cubic nanometres; lumber under an inch thick counts as an inch. */
    private static BigInteger tally(StockItem stock) {
        return nm(billedThickness(stock))
                .max(INCH)
                .multiply(nm(billedWidth(stock)))
                .multiply(nm(stock.length()));
    }

    /** A trade size is billed by its name: measured sizes decide fit, never the bill. */
    private static Length billedThickness(StockItem stock) {
        NominalSize nominal = stock.nominal();
        return nominal == null ? stock.thickness() : nominal.nominalThickness();
    }

    private static Length billedWidth(StockItem stock) {
        NominalSize nominal = stock.nominal();
        Length named = nominal == null ? null : nominal.nominalWidth();
        return named == null ? stock.width() : named;
    }

    private static BigInteger nm(Length length) {
        return BigInteger.valueOf(length.nanometres());
    }
}
