package org.stockcutting.wood;

import java.util.Objects;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;

/**
 * One kind of rough piece that is wanted from boards of random size. Staves may have any width between two limits: what is wanted of them is
 * jointed width, whatever the boards give it in. A gang is one piece.
 *
 * @param part id of the part
 * @param length rough length
 * @param woodClass how clear it must be
 * @param leastWidth least rough width
 * @param mostWidth greatest rough width, more than the least for staves only
 * @param perStave what jointing takes off a stave
 * @param count pieces wanted; for staves the fewest that can do
 * @param jointed jointed width wanted in all; 0 for anything but staves
 */
record Want(
        String part,
        long length,
        WoodClass woodClass,
        long leastWidth,
        long mostWidth,
        long perStave,
        long count,
        long jointed) {

    /**
     * @param quantity finished pieces
     */
    static Want of(RoughPiece piece, int quantity) {
        RoughSection.Sized sized = (RoughSection.Sized) piece.section();
        long count = Math.multiplyExact(
                (long) piece.perPart(), -Math.floorDiv(-quantity, piece.part().gang()));
        long width = sized.width().nanometres();
        Length jointedWidth = piece.jointedWidth();
        if (jointedWidth == null || !(piece.part().making() instanceof Making.GlueUp glueUp)) {
            return new Want(
                    piece.part().id(),
                    piece.length().nanometres(),
                    piece.part().woodClass(),
                    width,
                    width,
                    0,
                    count,
                    0);
        }
        long perStave = width - jointedWidth.nanometres();
        Length panel = Objects.requireNonNull(
                piece.trail().get(piece.trail().size() - 2).width());
        return new Want(
                piece.part().id(),
                piece.length().nanometres(),
                piece.part().woodClass(),
                glueUp.minStave().nanometres() + perStave,
                glueUp.maxStave().nanometres() + perStave,
                perStave,
                count,
                Math.multiplyExact(panel.nanometres(), quantity));
    }

    boolean isStave() {
        return jointed > 0;
    }

    /** What is wanted, in the measure of {@link RoughSawing}: pieces, or jointed width. */
    long wanted() {
        return isStave() ? jointed : count;
    }

    /** Width of all pieces beside each other, kerfs left out. */
    long acrossAll() {
        return isStave() ? jointed + count * perStave : count * leastWidth;
    }
}
