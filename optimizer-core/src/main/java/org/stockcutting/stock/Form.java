package org.stockcutting.stock;

/** A board has a length with ends and a grain; a sheet has four edges. Both are cut by the same model. */
public enum Form {
    BOARD("board"),
    SHEET("sheet");

    private final String word;

    Form(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
