package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;

/** What comes off one board when its cut tree is followed. */
final class Sawn {

    /** A piece as the saw leaves it. */
    record Leaf(String part, Rect rect) {}

    private final List<Leaf> parts = new ArrayList<>();
    private final List<Rect> offcuts = new ArrayList<>();
    private BigInteger trim = BigInteger.ZERO;
    private BigInteger kerf = BigInteger.ZERO;

    void part(String part, Rect rect) {
        parts.add(new Leaf(part, rect));
    }

    void offcut(Rect rect) {
        offcuts.add(rect);
    }

    void trim(Rect rect) {
        trim = trim.add(rect.area());
    }

    void kerf(Rect rect) {
        kerf = kerf.add(rect.area());
    }

    List<Leaf> parts() {
        return parts;
    }

    List<Rect> offcuts() {
        return offcuts;
    }

    /** Area of the trims with their own cuts. */
    BigInteger trimArea() {
        return trim;
    }

    /** Area that all other cuts turn to dust. */
    BigInteger kerfArea() {
        return kerf;
    }
}
