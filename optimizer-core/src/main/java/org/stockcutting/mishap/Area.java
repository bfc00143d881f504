package org.stockcutting.mishap;

import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;

/** A rectangle in raw coordinates of the board as it was bought. */
record Area(Length x0, Length y0, Length x1, Length y1) {

    Length length() {
        return x1.minus(x0);
    }

    Length width() {
        return y1.minus(y0);
    }

    boolean isEmpty() {
        return !length().isPositive() || !width().isPositive();
    }

    Length from(Direction cut) {
        return cut == Direction.CROSSCUT ? x0 : y0;
    }

    Length to(Direction cut) {
        return cut == Direction.CROSSCUT ? x1 : y1;
    }

    Area between(Direction cut, Length from, Length to) {
        return cut == Direction.CROSSCUT ? new Area(from, y0, to, y1) : new Area(x0, from, x1, to);
    }

    Area within(Area other) {
        return new Area(x0.max(other.x0), y0.max(other.y0), x1.min(other.x1), y1.min(other.y1));
    }
}
