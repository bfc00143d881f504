package org.stockcutting.part;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * Strips glued to the sides of a part, as on plywood. The part's sizes are finished sizes, edging included: what is cut from stock is
 * smaller by the thickness of the strips. A thickness of 0 is a band too thin to count, such as veneer tape; null is a bare side.
 *
 * @param start thickness on the end where the length begins; that band runs along the width
 * @param end thickness on the far end
 * @param edge thickness on the edge where the width begins; that band runs along the length
 * @param farEdge thickness on the far edge
 * @param over how much longer than its side each band is cut
 */
public record Edging(
        @Nullable Length start,
        @Nullable Length end,
        @Nullable Length edge,
        @Nullable Length farEdge,
        Length over) {

    /** Common practice, no source: enough to place a band by hand and trim it flush at both ends. */
    public static final Length USUAL_OVER = Length.inches("1");

    /** All sides bare. */
    public static final Edging NONE = new Edging(null, null, null, null, USUAL_OVER);

    /** True if no side has a band. */
    public boolean isNone() {
        return start == null && end == null && edge == null && farEdge == null;
    }

    /** What the bands on both ends take from the length. */
    public Length fromLength() {
        return orZero(start).plus(orZero(end));
    }

    /** What the bands on both edges take from the width. */
    public Length fromWidth() {
        return orZero(edge).plus(orZero(farEdge));
    }

    private static Length orZero(@Nullable Length length) {
        return Optional.ofNullable(length).orElse(Length.ZERO);
    }
}
