package org.stockcutting.job;

import java.util.List;
import org.stockcutting.part.Part;

/**
 * A shop rule that patterns alone cannot say. Every rule has four faces: in pricing, in the search, in the checker, and in the bound.
 * The rules of this kind share the first two: bundles of pieces that every board holds whole or not at all,
 * or that are one piece until the end.
 */
public sealed interface Rule {

    /** Name for messages. */
    String name();

    /** Ids of the parts it binds, sorted. */
    List<String> parts();

    /** How many pieces of one of its parts belong to one bundle. */
    int together(Part part);

    /**
     * All pieces of these parts that belong to one set come from one board.
     *
     * @param name the group's name
     * @param parts ids of the parts, sorted
     */
    record SameBoard(String name, List<String> parts) implements Rule {
        public SameBoard {
            parts = List.copyOf(parts);
        }

        @Override
        public int together(Part part) {
            return part.quantity();
        }
    }

    /**
     * The pieces of one set come from the wood as neighbours, part by part in the order of their ids, number by number: nothing but a saw cut
     * is between them. Engines see a set as one blank.
     *
     * @param name the group's name
     * @param parts ids of the parts, sorted
     */
    record Sequence(String name, List<String> parts) implements Rule {
        public Sequence {
            parts = List.copyOf(parts);
        }

        @Override
        public int together(Part part) {
            return part.quantity();
        }
    }

    /**
     * Mates come from one board: of one part numbers 1 and 2, 3 and 4 and so on, of two parts the pieces of equal number.
     *
     * @param name the group's name
     * @param parts ids of one part or two, sorted
     */
    record Pairs(String name, List<String> parts) implements Rule {
        public Pairs {
            parts = List.copyOf(parts);
        }

        @Override
        public int together(Part part) {
            return parts.size() == 1 ? 2 : 1;
        }
    }
}
