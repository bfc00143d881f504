package org.stockcutting.report;

import java.math.BigInteger;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Zone;

/** A rectangle on a board in nanometres, raw coordinates. */
record Rectangle(long x0, long y0, long x1, long y1) {

    static Rectangle of(Layout layout) {
        return new Rectangle(0, 0, layout.length().nanometres(), layout.width().nanometres());
    }

    static Rectangle of(Layout.LeftOver rest) {
        long x = rest.x().nanometres();
        long y = rest.y().nanometres();
        return new Rectangle(
                x, y, x + rest.length().nanometres(), y + rest.width().nanometres());
    }

    /** A zone; where it names no edges it covers the whole width of the board. */
    static Rectangle of(Zone zone, Layout layout) {
        Length from = zone.fromEdge();
        Length to = zone.toEdge();
        return new Rectangle(
                zone.from().nanometres(),
                from == null ? 0 : from.nanometres(),
                zone.to().nanometres(),
                to == null ? layout.width().nanometres() : to.nanometres());
    }

    Rectangle within(Rectangle other) {
        return new Rectangle(
                Math.max(x0, other.x0), Math.max(y0, other.y0), Math.min(x1, other.x1), Math.min(y1, other.y1));
    }

    boolean isEmpty() {
        return x1 <= x0 || y1 <= y0;
    }

    BigInteger area() {
        return isEmpty() ? BigInteger.ZERO : BigInteger.valueOf(x1 - x0).multiply(BigInteger.valueOf(y1 - y0));
    }
}
