package org.stockcutting.part;

/** What the group of a part asks of the boards that its pieces come from. */
public enum Binding {
    /** All pieces of one set come from one board. */
    SAME_BOARD("same-board"),
    /** Pieces belong together two by two; both mates come from one board. */
    PAIRS("pairs"),
    /** All pieces of one set are neighbours on one board, in order, with nothing but a saw cut between them. */
    SEQUENCE("sequence");

    private final String word;

    Binding(String word) {
        this.word = word;
    }

    /** The word used in documents. */
    public String word() {
        return word;
    }
}
