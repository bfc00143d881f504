package org.stockcutting.part;

/** A side of a part that may be a little smaller. */
public enum Side {
    /** Along the part. */
    LENGTH("length"),
    /** Across it. */
    WIDTH("width");

    private final String word;

    Side(String word) {
        this.word = word;
    }

    /** The word used in documents. */
    public String word() {
        return word;
    }
}
