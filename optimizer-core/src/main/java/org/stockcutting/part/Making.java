package org.stockcutting.part;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/** How a finished part comes out of rough wood. */
public sealed interface Making {

    /** Cut straight to its finished size. */
    record AsCut() implements Making {}

    /**
     * Cut rough, then milled to size.
     *
     * @param profile name of the allowance profile
     * @param gang how many parts stay together in one rough piece until they are planed; 1 where each has its own
     */
    record Milled(String profile, int gang) implements Making {

        /** Each part from a rough piece of its own. */
        public Milled(String profile) {
            this(profile, 1);
        }
    }

    /**
     * A panel glued up from staves lying side by side.
     *
     * @param minStave least jointed width of a stave
     * @param maxStave greatest jointed width of a stave
     * @param count number of staves, or null for the fewest that reach the width
     * @param from where the staves of one panel may come from
     */
    record GlueUp(
            Length minStave, Length maxStave, @Nullable Integer count, StaveSource from) implements Making {}

    /**
     * A thick part glued from plies of equal thickness.
     *
     * @param plies how many, at least 2
     */
    record Lamination(int plies) implements Making {}

    /** Where the staves of one panel come from. */
    enum StaveSource {
        ANY("any"),
        ONE_BOARD("one-board"),
        DIFFERENT_BOARDS("different-boards");

        private final String word;

        StaveSource(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
