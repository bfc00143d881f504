package org.stockcutting.check;

import java.math.BigInteger;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;

/** A rectangle in raw board coordinates, in nanometres; x1 and y1 are exclusive. */
record Rect(long x0, long y0, long x1, long y1) {

    /** About a thousand kilometres: nothing is farther out, so sums stay within a long whatever a plan says. */
    private static final long FARTHEST = 1L << 60;

    static Rect of(PlacedPiece piece) {
        Length along = piece.turned() ? piece.width() : piece.length();
        Length across = piece.turned() ? piece.length() : piece.width();
        return at(piece.x(), piece.y(), along, across);
    }

    static Rect at(Length x, Length y, Length along, Length across) {
        long x0 = clamped(x);
        long y0 = clamped(y);
        return new Rect(x0, y0, x0 + clamped(along), y0 + clamped(across));
    }

    private static long clamped(Length length) {
        return Math.max(-FARTHEST, Math.min(FARTHEST, length.nanometres()));
    }

    long width() {
        return y1 - y0;
    }

    long length() {
        return x1 - x0;
    }

    boolean isEmpty() {
        return x0 >= x1 || y0 >= y1;
    }

    /** True if both share some area. */
    boolean overlaps(Rect other) {
        return x0 < other.x1 && other.x0 < x1 && y0 < other.y1 && other.y0 < y1 && !isEmpty() && !other.isEmpty();
    }

    boolean contains(Rect other) {
        return x0 <= other.x0 && y0 <= other.y0 && other.x1 <= x1 && other.y1 <= y1;
    }

    Rect intersect(Rect other) {
        return new Rect(Math.max(x0, other.x0), Math.max(y0, other.y0), Math.min(x1, other.x1), Math.min(y1, other.y1));
    }

    BigInteger area() {
        return isEmpty() ? BigInteger.ZERO : BigInteger.valueOf(length()).multiply(BigInteger.valueOf(width()));
    }

    String text() {
        return "[" + Inspection.mm(x0) + " to " + Inspection.mm(x1) + ", " + Inspection.mm(y0) + " to "
                + Inspection.mm(y1) + "]";
    }
}
