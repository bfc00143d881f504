package org.stockcutting.wood;

import java.util.List;
import org.stockcutting.material.WoodClass;

/**
 * One kind of piece as it is crosscut: a stretch of the board over its whole width, from which one or more equal pieces are ripped.
 *
 * @param length stretch along the board
 * @param woodClass how clear it must be
 * @param demand pieces wanted
 * @param perSlice pieces that one stretch gives, by kind of stock; 0 where it cannot come from it
 */
record Slice(long length, WoodClass woodClass, int demand, List<Integer> perSlice) {

    Slice {
        perSlice = List.copyOf(perSlice);
    }

    /** True if every stretch gives one piece at most: the question is then one of lengths alone. */
    boolean isWhole() {
        return perSlice.stream().allMatch(count -> count <= 1);
    }
}
