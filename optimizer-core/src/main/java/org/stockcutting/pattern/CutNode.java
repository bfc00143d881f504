package org.stockcutting.pattern;

import java.util.List;
import org.stockcutting.length.Length;

/**
 * A layout as an n-ary tree of edge-to-edge (guillotine) cuts. Gilmore and Gomory, Operations Research 13 (1965), stages counted as
 * there: neighbouring nodes of one direction are one stage, nodes that only trim are none.
 */
public sealed interface CutNode {

    /**
     * All cuts of one direction through one rectangle, from the origin outwards. Between and around k slots lie k + 1 pieces.
     *
     * @param cut direction
     * @param slots what the saw removes, ascending and disjoint, in raw board coordinates along the divided axis
     * @param pieces the rectangles that remain, in order; one more than slots
     */
    record Cuts(Direction cut, List<Slot> slots, List<CutNode> pieces) implements CutNode {
        public Cuts {
            slots = List.copyOf(slots);
            pieces = List.copyOf(pieces);
            if (pieces.size() != slots.size() + 1) {
                throw new IllegalArgumentException(
                        slots.size() + " slots leave " + (slots.size() + 1) + " pieces, got " + pieces.size());
            }
        }
    }

    /**
     * A rectangle that is not cut further and becomes a (rough) piece.
     *
     * @param part id of the part
     */
    record PartLeaf(String part) implements CutNode {}

    /** A rectangle that is not a part. */
    enum RestLeaf implements CutNode {
        /** Removed from a raw end or edge. */
        TRIM("trim"),
        /** Left over, kept or not: listed among the layout's offcuts. */
        OFFCUT("offcut"),
        /** Nothing: less than a kerf was left and the saw took it. Has no extent. */
        SLIVER("sliver");

        private final String word;

        RestLeaf(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * What one pass of the saw removes: one kerf wide; narrower only where it runs out over the end of the rectangle; wider, but under
     * two kerfs, where two passes overlap.
     *
     * @param from start along the divided axis
     * @param to end along the divided axis
     */
    record Slot(Length from, Length to) {}
}
