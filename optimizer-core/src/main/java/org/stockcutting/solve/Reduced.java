package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.List;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.stock.StockItem;

/**
 * A component in small integers, and the way back.
 *
 * @param instance what the engines see
 * @param members for each item type the rough pieces merged into it, by part id
 * @param stock the stock item behind each stock type
 * @param unitX nanometres of one unit along the boards
 * @param unitY nanometres of one unit across the boards; equal to {@code unitX} where anything may be turned
 * @param costUnit atomic units of the goal in one cost unit
 * @param leastOffcut how long a leftover must be, in units, that the shop keeps: 0 where it has no rule at all
 * @param exact false if lengths or costs had to be rounded (parts up, stock down), or stave widths were fixed beforehand: plans stay
 *     valid, proofs by search do not carry over
 */
record Reduced(
        Instance instance,
        List<List<RoughPiece>> members,
        List<StockItem> stock,
        long unitX,
        long unitY,
        BigInteger costUnit,
        long leastOffcut,
        boolean exact) {

    /** True if some part is made of several pieces, so that pieces may turn out to be cut for nothing. */
    boolean hasStaves() {
        return members.stream().flatMap(List::stream).anyMatch(piece -> piece.perPart() > 1);
    }

    /** How many rough pieces of this member the whole job needs. */
    static int demand(RoughPiece piece, int sets) {
        int pieces = Math.multiplyExact(Math.multiplyExact(piece.part().quantity(), sets), piece.perPart());
        return pieces / piece.part().gang();
    }
}
