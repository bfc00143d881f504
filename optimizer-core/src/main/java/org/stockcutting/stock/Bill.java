package org.stockcutting.stock;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.NominalSize;

/**
 * What stock costs and how many board feet it has.
 *
 * <p>The bill follows the trade name: where an entry has a nominal size, thickness and width are the nominal ones, else the measured
 * ones; the length is always the entry's own. A board foot is 144 cubic inches, and lumber under 1 in thick counts as 1 in (the usual
 * rule of yards); how the yard rounds what is measured is its {@link Tally}. The price of what is sold as one, a piece or a pack, is computed exactly and rounded half up to the minor unit once.
 */
public final class Bill {

    private static final Length INCH = Length.inches("1");
    private static final BigInteger BOARD_FOOT = cube(LengthUnit.INCH).multiply(BigInteger.valueOf(144));
    private static final BigInteger THOUSAND = BigInteger.valueOf(1000);
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final int BOARD_FEET_DECIMALS = 2;

    private Bill() {}

    /**
     * The price of what is sold as one, a piece or a pack, below any price break.
     *
     * @throws IllegalArgumentException if the entry has no price
     */
    public static Money price(StockItem.ForSale item) {
        return price(item, priceOf(item).amount());
    }

    /**
     * What to buy so that so many pieces are there: the cheapest quantity, of two that cost the same the smaller.
     *
     * @param needed pieces that are cut, at least 0
     * @param fewest true to buy no more than whole packs ask for, even where more would be cheaper: the goal boards
     */
    public static Purchase purchase(StockItem.ForSale item, int needed, boolean fewest) {
        Offer offer = item.offer();
        int least = packed(needed, offer.pack());
        if (item.price() == null) {
            return new Purchase(needed, least, null, 0, null, least);
        }
        Purchase best = bought(item, needed, least);
        int most = item.copies().orElse(Integer.MAX_VALUE);
        if (needed > 0 && !fewest) {
            for (Offer.Break step : offer.breaks()) {
                int reached = packed(Math.max(needed, step.from()), offer.pack());
                Purchase more = reached > most ? best : bought(item, needed, reached);
                best = total(more).compareTo(total(best)) < 0 ? more : best;
            }
        }
        return needed == 0 ? best : sameMoney(item, best, most);
    }

    private static Purchase sameMoney(StockItem.ForSale item, Purchase best, int available) {
        int most = best.pieces();
        for (Offer.Break step : item.offer().breaks()) {
            int reached = packed(step.from(), item.offer().pack());
            boolean same = reached > most
                    && reached <= available
                    && total(bought(item, best.needed(), reached)).equals(total(best));
            most = same ? reached : most;
        }
        return new Purchase(best.needed(), best.pieces(), best.each(), best.breakFrom(), best.total(), most);
    }

    private static Purchase bought(StockItem.ForSale item, int needed, int pieces) {
        BigDecimal amount = priceOf(item).amount();
        int from = 0;
        for (Offer.Break step : item.offer().breaks()) {
            if (step.from() <= pieces) {
                amount = step.amount();
                from = step.from();
            }
        }
        Money each = price(item, amount);
        return new Purchase(
                needed, pieces, each, from, each.times(pieces / item.offer().pack()), pieces);
    }

    private static Money total(Purchase purchase) {
        return java.util.Objects.requireNonNull(purchase.total());
    }

    /** Whole packs. */
    private static int packed(int pieces, int pack) {
        return Math.multiplyExact(-Math.floorDiv(-pieces, pack), pack);
    }

    private static Price priceOf(StockItem.ForSale item) {
        Price price = item.price();
        if (price == null) {
            throw new IllegalArgumentException(
                    "stock " + item.id() + " has no price: give it one, or choose a goal other than cost");
        }
        return price;
    }

    private static Money price(StockItem.ForSale item, BigDecimal amount) {
        Price price = priceOf(item);
        Quantity billed = quantity(item, price.per());
        int decimals = price.currency().getDefaultFractionDigits();
        BigDecimal exact = amount.multiply(new BigDecimal(billed.amount()))
                .multiply(BigDecimal.valueOf(item.offer().pack()))
                .multiply(HUNDRED.add(premium(item)));
        return new Money(
                exact.divide(new BigDecimal(billed.unit()).multiply(HUNDRED), decimals, RoundingMode.HALF_UP),
                price.currency());
    }

    private static BigDecimal premium(StockItem.ForSale item) {
        BigDecimal percent = BigDecimal.ZERO;
        for (Offer.Premium premium : item.offer().premiums()) {
            percent = billedWidth(item).isMoreThan(premium.over()) ? premium.percent() : percent;
        }
        return percent;
    }

    /** Board feet of one piece, two decimals, half up. */
    public static BigDecimal boardFeet(StockItem item) {
        return boardFeet(item, 1);
    }

    /** Board feet of several equal pieces: the exact sum, rounded half up to two decimals once. */
    public static BigDecimal boardFeet(StockItem item, int quantity) {
        BigInteger all = tallied(item).multiply(BigInteger.valueOf(quantity));
        return new BigDecimal(all).divide(new BigDecimal(BOARD_FOOT), BOARD_FEET_DECIMALS, RoundingMode.HALF_UP);
    }

    /** Board feet of a volume of random boards at their billed thickness, two decimals, rounded up: so much has to be bought. */
    public static BigDecimal boardFeet(RandomBoards boards, BigInteger volume) {
        Length thickness = boards.billedThickness();
        return new BigDecimal(volume.multiply(nanometres(thickness.max(INCH))))
                .divide(
                        new BigDecimal(BOARD_FOOT.multiply(nanometres(thickness))),
                        BOARD_FEET_DECIMALS,
                        RoundingMode.CEILING);
    }

    /**
     * Price of so much of random boards, rounded half up once.
     *
     * @throws IllegalArgumentException if the boards have no price, or none by volume
     */
    public static Money price(RandomBoards boards, BigInteger volume, BigDecimal boardFeet) {
        Price price = boards.price();
        if (price == null) {
            throw new IllegalArgumentException("boards " + boards.id() + " have no price");
        }
        return switch (price.per()) {
            case BOARD_FOOT -> Money.rounded(price.amount().multiply(boardFeet), price.currency());
            case THOUSAND_BOARD_FEET ->
                Money.rounded(price.amount().multiply(boardFeet).movePointLeft(3), price.currency());
            case CUBIC_METRE ->
                new Money(
                        price.amount()
                                .multiply(new BigDecimal(volume))
                                .divide(
                                        new BigDecimal(cube(LengthUnit.METRE)),
                                        price.currency().getDefaultFractionDigits(),
                                        RoundingMode.HALF_UP),
                        price.currency());
            default ->
                throw new IllegalArgumentException("boards " + boards.id() + " are not priced by volume but by "
                        + price.per().word());
        };
    }

    private static Quantity quantity(StockItem.ForSale item, PriceUnit per) {
        BigInteger length = nanometres(item.length());
        BigInteger width = nanometres(billedWidth(item));
        return switch (per) {
            case PIECE -> new Quantity(BigInteger.ONE, BigInteger.ONE);
            case FOOT -> new Quantity(length, unit(LengthUnit.FOOT));
            case METRE -> new Quantity(length, unit(LengthUnit.METRE));
            case BOARD_FOOT -> new Quantity(tallied(item), BOARD_FOOT);
            case THOUSAND_BOARD_FEET -> new Quantity(tallied(item), BOARD_FOOT.multiply(THOUSAND));
            case SQUARE_FOOT ->
                new Quantity(length.multiply(width), unit(LengthUnit.FOOT).pow(2));
            case SQUARE_METRE ->
                new Quantity(length.multiply(width), unit(LengthUnit.METRE).pow(2));
            case CUBIC_METRE ->
                new Quantity(
                        length.multiply(width).multiply(nanometres(billedThickness(item))), cube(LengthUnit.METRE));
            case PACK ->
                new Quantity(BigInteger.ONE, BigInteger.valueOf(item.offer().pack()));
        };
    }

    /** What is billed of one piece by the board foot, in cubic nanometres. */
    public static BigInteger tallied(StockItem item) {
        NominalSize nominal = item.nominal();
        boolean named = nominal != null && nominal.nominalWidth() != null;
        Tally tally =
                item instanceof StockItem.ForSale sale && !named ? sale.offer().tally() : Tally.EXACT;
        return tally.volume(item.length(), billedWidth(item), billedThickness(item));
    }

    private static Length billedThickness(StockItem item) {
        NominalSize nominal = item.nominal();
        return nominal == null ? item.thickness() : nominal.nominalThickness();
    }

    /** Quarters such as 4/4 name no width: random widths are tallied as measured. */
    private static Length billedWidth(StockItem item) {
        NominalSize nominal = item.nominal();
        @Nullable Length named = nominal == null ? null : nominal.nominalWidth();
        return named == null ? item.width() : named;
    }

    private static BigInteger nanometres(Length length) {
        return BigInteger.valueOf(length.nanometres());
    }

    private static BigInteger unit(LengthUnit unit) {
        return BigInteger.valueOf(unit.nanometres());
    }

    private static BigInteger cube(LengthUnit unit) {
        return unit(unit).pow(3);
    }

    /** How much is billed, as an exact quotient. */
    private record Quantity(BigInteger amount, BigInteger unit) {}
}
