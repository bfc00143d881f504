package org.stockcutting.part;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * The maker's own choice of wood for a part, kept by every plan: any place on one entry of stock, or one place of one board that is there.
 *
 * @param stock id of an entry for sale or on hand; with a place, of a single board, sheet or offcut on hand
 * @param from where the rough piece begins, along the length from the raw start end, 0 or more; null leaves the place to the plan
 * @param edge where it begins across, from the edge where 0 is, or null for right behind the trim of that edge
 */
public record CutFrom(
        String stock, @Nullable Length from, @Nullable Length edge) {

    /** From this entry, at any place. */
    public CutFrom(String stock) {
        this(stock, null, null);
    }

    /** A chosen place. */
    public record Place(String stock, Length from, @Nullable Length edge) {}

    /** The place, or null where only the entry is chosen. */
    public @Nullable Place place() {
        return from == null ? null : new Place(stock, from, edge);
    }
}
