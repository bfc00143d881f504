package org.stockcutting.blank;

import org.stockcutting.length.Length;

/** What a rough piece asks of the stock across its length. */
public sealed interface RoughSection {

    /**
     * Takes stock of this trade size at its full width and thickness, whatever it measures.
     *
     * @param nominal trade name that the stock must carry
     */
    record AsItComes(String nominal) implements RoughSection {}

    /**
     * Needs at least this width (ripped from wider stock) and a thickness.
     *
     * @param width rough width
     * @param thickness rough thickness
     * @param planed true if an allowance planes it: stock may then be thicker by the shop's greatest planing, never thinner; else the
     *     stock's thickness must agree within the shop's tolerance
     */
    record Sized(Length width, Length thickness, boolean planed) implements RoughSection {}
}
