package org.stockcutting.plan;

import java.util.List;
import java.util.Optional;
import org.stockcutting.length.Length;

/**
 * Whether the boards that were picked suffice, told again after every board.
 *
 * @param steps one for each board on hand, in the order in which they are listed; at least one
 */
public record Enough(List<Step> steps) {

    public Enough {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("no board, nothing to tell");
        }
    }

    /**
     * What all boards up to this one come to.
     *
     * @param board id of the board that was added last
     * @param missing parts that still have no board, and why
     * @param unused ids of boards that no part needs
     * @param longestLeft longest rest of a board that is cut, zero where nothing is left
     */
    public record Step(String board, List<Unplaced> missing, List<String> unused, Length longestLeft) {
        public Step {
            missing = List.copyOf(missing);
            unused = List.copyOf(unused);
        }

        /** True if every part has its board. */
        public boolean isEnough() {
            return missing.isEmpty();
        }
    }

    /** The first board with which there is enough; empty where there is not enough yet. */
    public Optional<Step> firstEnough() {
        return steps.stream().filter(Step::isEnough).findFirst();
    }

    /** What all boards together come to. */
    public Step atLast() {
        return steps.get(steps.size() - 1);
    }
}
