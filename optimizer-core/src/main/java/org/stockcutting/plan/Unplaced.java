package org.stockcutting.plan;

import org.jspecify.annotations.Nullable;

/**
 * Parts that got no wood, and the way out.
 *
 * @param part id of the part
 * @param quantity how many finished pieces are missing
 * @param reason why
 * @param needs what it needs, in the job's text form, or null
 * @param limit the most there is, or null
 * @param remedy what would help, one sentence
 */
public record Unplaced(
        String part,
        int quantity,
        Reason reason,
        @Nullable String needs,
        @Nullable String limit,
        String remedy) {

    /** The closed set of reasons. */
    public enum Reason {
        LONGER_THAN_ANY_STOCK("longer-than-any-stock"),
        WIDER_THAN_ANY_STOCK("wider-than-any-stock"),
        NO_STOCK_OF_MATERIAL("no-stock-of-material"),
        NO_STOCK_OF_THICKNESS("no-stock-of-thickness"),
        GRAIN_DOES_NOT_FIT("grain-does-not-fit"),
        NO_CLEAR_ZONE("no-clear-zone"),
        STOCK_EXHAUSTED("stock-exhausted"),
        EXCLUDED_BY_RULE("excluded-by-rule"),
        NOT_REACHED_BEFORE_LIMIT("not-reached-before-limit");

        private final String word;

        Reason(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
