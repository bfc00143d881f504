package org.stockcutting.plan;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * One step at the saw.
 *
 * @param step counted from 1
 * @param kind {@code trim}, {@code crosscut} or {@code rip}
 * @param setUp the stop or fence position the step is made at, or null where it is made to a drawn line
 * @param board {@code {stock} #k}, k counted per stock id in layout order
 * @param reading running tape reading of the cut from the origin end or edge of the board
 * @param part part that the step frees, or null
 * @param number its number, or null
 * @param caution a usual caution for this cut, or null
 */
public record SequenceStep(
        int step,
        String kind,
        @Nullable SetUp setUp,
        String board,
        Length reading,
        @Nullable String part,
        @Nullable Integer number,
        @Nullable String caution) {

    /**
     * One position of one stop or fence on one machine, until it is moved.
     *
     * @param machine {@code crosscut} or {@code rip}
     * @param stop distance from stop or fence to blade
     */
    public record SetUp(String machine, Length stop) {}
}
