package org.stockcutting.solve.instance;

import java.util.List;

/** A rectangle of one board, in usable coordinates, and how it is cut further. What its parts do not cover is left over. */
public sealed interface Region {

    long x();

    long y();

    long length();

    long width();

    /** A placed item: its rectangle is exactly the piece (full usable width for an item that takes the board as it comes). */
    record Item(int item, boolean turned, long x, long y, long length, long width) implements Region {}

    /**
     * Cuts of one direction.
     *
     * @param crosscut true: parts follow each other along x; false: along y
     * @param parts in ascending order, neighbours at least a kerf apart; across the divided axis each part spans this region or less, the
     *     rest being left over
     */
    record Split(boolean crosscut, long x, long y, long length, long width, List<Region> parts) implements Region {
        public Split {
            parts = List.copyOf(parts);
        }
    }
}
