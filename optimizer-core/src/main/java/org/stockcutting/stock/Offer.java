package org.stockcutting.stock;

import java.math.BigDecimal;
import java.util.List;
import org.stockcutting.length.Length;

/**
 * How an entry is sold beside its price: in packs, cheaper from a quantity on, dearer when it is wide (common practice of yards, no
 * source).
 *
 * @param pack only whole packs of so many pieces are sold, at least 1; 1 is by the piece
 * @param breaks lower prices for more, by ascending quantity
 * @param premiums what wide boards cost more, by ascending width
 * @param tally how board feet are counted where no trade size names the width
 */
public record Offer(int pack, List<Break> breaks, List<Premium> premiums, Tally tally) {

    /** By the piece, at one price. */
    public static final Offer PLAIN = new Offer(1, List.of(), List.of());

    /** Board feet counted as measured. */
    public Offer(int pack, List<Break> breaks, List<Premium> premiums) {
        this(pack, breaks, premiums, Tally.EXACT);
    }

    public Offer {
        breaks = List.copyOf(breaks);
        premiums = List.copyOf(premiums);
    }

    /**
     * Another price, which then holds for every piece of the entry, the first ones too.
     *
     * @param from pieces bought from which on it holds, at least 2
     * @param amount instead of the amount of the entry's price, for the same unit
     */
    public record Break(int from, BigDecimal amount) {}

    /**
     * A wide board costs more; of several the one with the greatest width holds, by itself.
     *
     * @param over billed width beyond which it holds
     * @param percent added to the price, in per cent
     */
    public record Premium(Length over, BigDecimal percent) {}

    /** True if what so many pieces cost is not just so many times what one costs. */
    public boolean isStaircase() {
        return pack > 1 || !breaks.isEmpty();
    }
}
