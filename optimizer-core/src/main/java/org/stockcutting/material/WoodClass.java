package org.stockcutting.material;

/** How clear the wood of a part must be. Order matters: each accepts what the ones before accept, and more. */
public enum WoodClass {
    /** Takes no bad zone at all. */
    CLEAR("clear"),
    /** Takes tight knots. */
    TIGHT_KNOT("tight-knot"),
    /** Takes tight knots and blemishes; never unusable wood. */
    ANY("any");

    private final String word;

    WoodClass(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
