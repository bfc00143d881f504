package org.stockcutting.stock;

/** How an entry is sold, beyond a price for one: piece by piece, so far. */
public record Offer() {

    /** Piece by piece. */
    public static final Offer PLAIN = new Offer();
}
