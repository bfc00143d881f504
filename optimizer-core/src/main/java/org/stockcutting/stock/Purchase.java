package org.stockcutting.stock;

import org.jspecify.annotations.Nullable;

/**
 * What has to be bought of one entry so that enough pieces are there.
 *
 * @param needed pieces that are cut
 * @param pieces pieces that are bought: whole packs, and more than needed where that is cheaper
 * @param each price of what is sold as one, a piece or a pack, rounded half up once; null where the entry has no price
 * @param breakFrom quantity from which this price holds; 0 for the entry's own price
 * @param total what all of them cost, or null
 * @param most most pieces that are had for the same money; {@code pieces} where there is no price
 */
public record Purchase(
        int needed,
        int pieces,
        @Nullable Money each,
        int breakFrom,
        @Nullable Money total,
        int most) {}
