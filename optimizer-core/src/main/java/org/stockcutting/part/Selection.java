package org.stockcutting.part;

/** Which wood a part may be made of, beyond its material and class: any, so far. */
public record Selection() {

    /** Any wood that fits. */
    public static final Selection NONE = new Selection();
}
