package org.stockcutting.part;

/** What is done to a part after it has its size: nothing, so far. */
public record Shaping() {

    /** Nothing is done to it. */
    public static final Shaping NONE = new Shaping();
}
