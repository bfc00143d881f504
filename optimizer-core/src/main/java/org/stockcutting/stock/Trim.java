package org.stockcutting.stock;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * What is removed from the raw ends and edges of a piece of stock, each with its own cut included. Null means that nothing was said:
 * nothing is removed, and a part that keeps the raw end is warned about. An explicit zero means the end is good as it is.
 *
 * @param start at x = 0
 * @param end at the far end
 * @param edge at y = 0
 * @param farEdge at the far edge
 */
public record Trim(
        @Nullable Length start,
        @Nullable Length end,
        @Nullable Length edge,
        @Nullable Length farEdge) {

    public static final Trim NONE = new Trim(null, null, null, null);

    public Length startOrZero() {
        return orZero(start);
    }

    public Length endOrZero() {
        return orZero(end);
    }

    public Length edgeOrZero() {
        return orZero(edge);
    }

    public Length farEdgeOrZero() {
        return orZero(farEdge);
    }

    private static Length orZero(@Nullable Length length) {
        return length == null ? Length.ZERO : length;
    }
}
