package org.stockcutting.check;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.material.NominalSize;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.Offer;
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

    /**
     * One row of a price list.
     *
     * @param from pieces from which on it holds
     * @param each minor units of what is sold as one, a piece or a pack
     */
    record Row(long from, BigInteger each) {}

    /**
     * What is bought so that so many pieces are there.
     *
     * @param pieces how many
     * @param row price that holds then, or null where there is none
     * @param total minor units of all, 0 without price
     * @param most most pieces for the same money
     */
    record Sale(long pieces, @Nullable Row row, BigInteger total, long most) {}

    /** The price list of an entry, lowest quantity first; empty without a price. */
    static List<Row> rows(StockItem.ForSale stock) {
        Price price = stock.price();
        if (price == null) {
            return List.of();
        }
        List<Row> rows = new ArrayList<>();
        rows.add(new Row(0, each(stock, price)));
        for (Offer.Break step : stock.offer().breaks()) {
            rows.add(new Row(step.from(), each(stock, new Price(step.amount(), price.currency(), price.per()))));
        }
        return rows;
    }

    /** The cheapest way to have so many pieces; where the fewest are wanted, just the packs that hold them. */
    static Sale sale(StockItem.ForSale stock, long needed, boolean fewest) {
        List<Row> rows = rows(stock);
        long least = wholePacks(stock, needed);
        if (rows.isEmpty()) {
            return new Sale(least, null, BigInteger.ZERO, least);
        }
        long available = stock.available() == null ? Long.MAX_VALUE : stock.available();
        List<Sale> ways = new ArrayList<>(List.of(way(stock, rows, least)));
        for (Row row : rows) {
            long pieces = wholePacks(stock, row.from);
            if (needed > 0 && pieces > least && pieces <= available) {
                ways.add(way(stock, rows, pieces));
            }
        }
        Sale best = ways.get(0);
        for (Sale way : ways) {
            best = !fewest && way.total.compareTo(best.total) < 0 ? way : best;
        }
        long most = best.pieces;
        for (Sale way : ways) {
            most = way.total.equals(best.total) ? Math.max(most, way.pieces) : most;
        }
        return new Sale(best.pieces, best.row, best.total, most);
    }

    private static Sale way(StockItem.ForSale stock, List<Row> rows, long pieces) {
        Row holds = rows.get(0);
        for (Row row : rows) {
            holds = row.from <= pieces ? row : holds;
        }
        long lots = pieces / stock.offer().pack();
        return new Sale(pieces, holds, holds.each.multiply(BigInteger.valueOf(lots)), pieces);
    }

    /**
     * The least that one board can come to while no more than so many are cut: what n boards cost is at least n times that. Below a break
     * the quantity that reaches it is paid, in an opened pack all of it.
     */
    static BigFraction least(StockItem.ForSale stock, long most) {
        long pack = stock.offer().pack();
        long available = stock.available() == null ? Long.MAX_VALUE : stock.available() / pack * pack;
        long boards = Math.max(1, Math.min(most, available));
        BigFraction least = null;
        for (Row row : rows(stock)) {
            if (row.from > available) {
                break;
            }
            long full = boards - boards % pack;
            // The last pack that is cut up whole; without one that reaches the break, all boards share what must be
            // paid.
            boolean whole = full > 0 && full >= row.from;
            long paid = whole ? full : wholePacks(stock, Math.max(boards, row.from));
            BigFraction each = new BigFraction(
                    row.each.multiply(BigInteger.valueOf(paid / pack)), BigInteger.valueOf(whole ? full : boards));
            least = least == null || each.compareTo(least) < 0 ? each : least;
        }
        return least == null ? BigFraction.ZERO : least;
    }

    private static long wholePacks(StockItem.ForSale stock, long pieces) {
        long pack = stock.offer().pack();
        return (pieces + pack - 1) / pack * pack;
    }

    /** Minor units of a piece or a pack at this price, a premium for its width included, rounded half up once. */
    private static BigInteger each(StockItem.ForSale stock, Price price) {
        BigInteger length = nm(stock.length());
        BigInteger area = length.multiply(nm(billedWidth(stock)));
        BigInteger volume = area.multiply(nm(billedThickness(stock)));
        BigInteger thousand = BigInteger.valueOf(1000);
        BigFraction exact = switch (price.per()) {
            case PIECE -> ratio(price, BigInteger.ONE, BigInteger.ONE);
            case FOOT -> ratio(price, length, FOOT);
            case METRE -> ratio(price, length, METRE);
            case BOARD_FOOT -> ratio(price, tally(stock), BOARD_FOOT);
            case THOUSAND_BOARD_FEET -> ratio(price, tally(stock), BOARD_FOOT.multiply(thousand));
            case SQUARE_FOOT -> ratio(price, area, FOOT.pow(2));
            case SQUARE_METRE -> ratio(price, area, METRE.pow(2));
            case CUBIC_METRE -> ratio(price, volume, METRE.pow(3));
            case PACK ->
                ratio(price, BigInteger.ONE, BigInteger.valueOf(stock.offer().pack()));
        };
        BigDecimal factor = BigDecimal.ONE.add(percent(stock).movePointLeft(2));
        BigFraction lot =
                exact.multiply(fraction(factor)).multiply(stock.offer().pack());
        int digits = price.currency().getDefaultFractionDigits();
        return new BigDecimal(lot.getNumerator().multiply(BigInteger.TEN.pow(digits)))
                .divide(new BigDecimal(lot.getDenominator()), 0, RoundingMode.HALF_UP)
                .toBigInteger();
    }

    private static BigDecimal percent(StockItem.ForSale stock) {
        return stock.offer().premiums().stream()
                .filter(premium -> billedWidth(stock).isMoreThan(premium.over()))
                .max(Comparator.comparing(Offer.Premium::over))
                .map(Offer.Premium::percent)
                .orElse(BigDecimal.ZERO);
    }

    private static BigFraction ratio(Price price, BigInteger size, BigInteger unit) {
        return fraction(price.amount()).multiply(new BigFraction(size, unit));
    }

    private static BigFraction fraction(BigDecimal number) {
        BigDecimal whole = number.scale() < 0 ? number.setScale(0) : number;
        return new BigFraction(whole.unscaledValue(), BigInteger.TEN.pow(whole.scale()));
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

    /** Billed volume in cubic nanometres; lumber under an inch thick counts as an inch, and yards round what no trade size names. */
    private static BigInteger tally(StockItem stock) {
        BigInteger thickness = nm(billedThickness(stock)).max(INCH);
        BigInteger width = nm(billedWidth(stock));
        BigInteger length = nm(stock.length());
        boolean measured = stock.nominal() == null || stock.nominal().nominalWidth() == null;
        if (measured && stock instanceof StockItem.ForSale sale) {
            BigInteger[] feet = length.divideAndRemainder(FOOT);
            switch (sale.offer().tally()) {
                case SURFACE_MEASURE -> {
                    BigFraction surface = new BigFraction(feet[0].multiply(width), FOOT);
                    return whole(surface).multiply(FOOT.pow(2)).multiply(thickness);
                }
                case NEXT_INCH -> {
                    boolean over = feet[1].compareTo(INCH.multiply(BigInteger.valueOf(3))) > 0;
                    length = FOOT.multiply(over ? feet[0].add(BigInteger.ONE) : feet[0]);
                    width = next(width, INCH);
                    thickness = next(thickness, INCH.divide(BigInteger.valueOf(4)));
                }
                case HALF_INCH -> width = next(width, INCH.divide(BigInteger.TWO));
                case EXACT -> {}
            }
        }
        return thickness.multiply(width).multiply(length);
    }

    /** The nearest whole number, halves up. */
    private static BigInteger whole(BigFraction number) {
        BigFraction more = number.add(BigFraction.ONE_HALF);
        return more.getNumerator().divide(more.getDenominator());
    }

    private static BigInteger next(BigInteger size, BigInteger step) {
        return size.add(step).subtract(BigInteger.ONE).divide(step).multiply(step);
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
