package org.stockcutting.part;

import org.stockcutting.length.Length;

/** What a part measures across: either a trade size taken as it comes, or a width and a thickness to be reached. */
public sealed interface Section {

    /** The board as it comes: full width and thickness, whatever it measures. */
    record Nominal(String name) implements Section {}

    /** A width and a thickness that the finished part must have. */
    record Measured(Length width, Length thickness) implements Section {}
}
