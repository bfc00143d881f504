package org.stockcutting.job;

/** What is least after all parts are placed. */
public enum Goal {
    /** Money paid for stock; pieces on hand are free. */
    COST("cost"),
    /** Volume bought or taken, minus parts and kept offcuts. */
    WASTE("waste"),
    /** Number of pieces of stock bought; pieces on hand are free. */
    BOARDS("boards");

    private final String word;

    Goal(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
