package org.stockcutting.solve.columns;

/**
 * What is placed as a whole: one item, or one set of a group laid end to end.
 *
 * @param items item type of each piece, longest first
 * @param size length of the pieces, each with a kerf behind it
 * @param weight finished volume
 * @param demand how many are wanted
 * @param perBoard most on one board
 */
record Unit(int[] items, long size, long weight, int demand, int perBoard) {

    int cap() {
        return Math.min(demand, perBoard);
    }
}
