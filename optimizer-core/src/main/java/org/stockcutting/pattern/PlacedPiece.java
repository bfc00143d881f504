package org.stockcutting.pattern;

import java.util.List;
import org.stockcutting.length.Length;

/**
 * A rough piece at its place on a board; positions are raw, before trim.
 *
 * @param part id of the part it becomes
 * @param numbers which copy of the part it becomes on each of the equal boards, counted from 1; numbers beyond the demand are spares
 * @param members for staves and plies: which stave or ply of that part it is on each of the equal boards, counted from 1; else empty
 * @param x start along the length
 * @param y start across
 * @param length the rough piece's own length
 * @param width the rough piece's own width
 * @param turned true if its length lies across the board
 */
public record PlacedPiece(
        String part,
        List<Integer> numbers,
        List<Integer> members,
        Length x,
        Length y,
        Length length,
        Length width,
        boolean turned) {

    public PlacedPiece {
        numbers = List.copyOf(numbers);
        members = List.copyOf(members);
    }

    /** Extent along x. */
    public Length extentX() {
        return turned ? width : length;
    }

    /** Extent along y. */
    public Length extentY() {
        return turned ? length : width;
    }
}
