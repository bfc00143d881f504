package org.stockcutting.material;

/**
 * The axis the grain runs along. A piece is turned on its board exactly when its own axis and the stock's differ; where either is
 * {@link #ANY} it may lie either way.
 */
public enum Grain {
    LENGTH("length"),
    WIDTH("width"),
    ANY("any");

    private final String word;

    Grain(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** True if a piece with this axis may lie unturned on stock with the other axis. */
    public boolean allowsStraight(Grain stock) {
        return this == ANY || stock == ANY || this == stock;
    }

    /** True if a piece with this axis may lie turned by a right angle on stock with the other axis. */
    public boolean allowsTurned(Grain stock) {
        return this == ANY || stock == ANY || this != stock;
    }
}
