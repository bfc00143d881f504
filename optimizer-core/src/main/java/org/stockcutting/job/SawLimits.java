package org.stockcutting.job;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * What the saws can do. Null never restricts.
 *
 * @param ripCapacity greatest distance from fence to blade: the smaller side of every rip is at most this
 * @param longestRip longest piece that can be ripped
 * @param crosscutCapacity widest piece that can be crosscut
 * @param stages greatest number of cutting directions in a row on any path of the cut tree, trims not counted; at least 1
 * @param firstCut direction of the first cut that is not a trim
 * @param minimumPiece every cut is made on a piece at least this long
 */
public record SawLimits(
        @Nullable Length ripCapacity,
        @Nullable Length longestRip,
        @Nullable Length crosscutCapacity,
        @Nullable Integer stages,
        FirstCut firstCut,
        @Nullable Length minimumPiece) {

    public static final SawLimits NONE = new SawLimits(null, null, null, null, FirstCut.ANY, null);

    /** Direction of the first cut. */
    public enum FirstCut {
        RIP("rip"),
        CROSSCUT("crosscut"),
        ANY("any");

        private final String word;

        FirstCut(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
