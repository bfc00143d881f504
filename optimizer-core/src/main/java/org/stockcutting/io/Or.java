package org.stockcutting.io;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * Stands in for what could not be read, so that reading goes on and finds the other faults. A job with such values never leaves the
 * reader.
 */
final class Or {

    /** A harmless size. */
    static final Length SIZE = Length.inches("1");

    /** A harmless name. */
    static final String NAME = "unreadable";

    private Or() {}

    static <T> T of(@Nullable T value, T other) {
        return value == null ? other : value;
    }

    static Length size(@Nullable Length length) {
        return length == null ? SIZE : length;
    }

    static Length zero(@Nullable Length length) {
        return length == null ? Length.ZERO : length;
    }
}
