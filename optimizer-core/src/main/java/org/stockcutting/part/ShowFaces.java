package org.stockcutting.part;

/** How many faces of a part are seen. */
public enum ShowFaces {
    /** The good face only: what shows on the back of the board does not matter. */
    ONE("one"),
    /** Both. */
    BOTH("both");

    private final String word;

    ShowFaces(String word) {
        this.word = word;
    }

    /** The word used in documents. */
    public String word() {
        return word;
    }
}
