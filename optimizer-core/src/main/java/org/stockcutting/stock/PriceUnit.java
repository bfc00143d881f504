package org.stockcutting.stock;

/** What a price is for. Board feet are billed at nominal sizes where the entry has them. */
public enum PriceUnit {
    PIECE("piece"),
    FOOT("foot"),
    METRE("metre"),
    BOARD_FOOT("board-foot"),
    THOUSAND_BOARD_FEET("thousand-board-feet"),
    SQUARE_FOOT("square-foot"),
    SQUARE_METRE("square-metre"),
    CUBIC_METRE("cubic-metre"),
    /** A whole pack, where the entry is sold in packs. */
    PACK("pack");

    private final String word;

    PriceUnit(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
