package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.pattern.PlacedPiece;

/**
 * One rough piece of one part.
 *
 * @param part id of the part
 * @param number number of the part, from 1
 * @param member which stave or ply, from 1; 0 for a part that is cut whole
 */
public record Want(String part, int number, int member) implements Comparable<Want> {

    private static final Comparator<Want> ORDER =
            Comparator.comparing(Want::part).thenComparingInt(Want::number).thenComparingInt(Want::member);

    @Override
    public int compareTo(Want other) {
        return ORDER.compare(this, other);
    }

    /** What a placed piece is on one of the equal boards. */
    public static Want of(PlacedPiece piece, int copy) {
        return new Want(
                piece.part(),
                piece.numbers().get(copy),
                piece.members().isEmpty() ? 0 : piece.members().get(copy));
    }

    /** The piece at its place under other names, one for each equal board. */
    public static PlacedPiece relabelled(PlacedPiece piece, List<Want> labels) {
        List<Integer> numbers = new ArrayList<>();
        List<Integer> members = new ArrayList<>();
        for (Want label : labels) {
            numbers.add(label.number());
            if (label.member() > 0) {
                members.add(label.member());
            }
        }
        return new PlacedPiece(
                labels.get(0).part(),
                numbers,
                members,
                piece.x(),
                piece.y(),
                piece.length(),
                piece.width(),
                piece.turned());
    }
}
