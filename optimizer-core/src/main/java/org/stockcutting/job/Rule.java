package org.stockcutting.job;

import java.util.List;

/**
 * A shop rule that patterns alone cannot say. Every rule has four faces: in pricing, in the search, in the checker, and in the bound.
 */
public sealed interface Rule {

    /** Name for messages. */
    String name();

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
    }
}
