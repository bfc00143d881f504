package org.stockcutting.stock;

/** How true a measured board is: straight and of one width, so far. */
public record Condition() {

    /** Straight and of one width. */
    public static final Condition TRUE = new Condition();
}
