package org.stockcutting.pattern;

/** Direction of an edge-to-edge cut on a board whose length runs along x. */
public enum Direction {
    /** Across: divides x. */
    CROSSCUT("crosscut"),
    /** Along: divides y. */
    RIP("rip");

    private final String word;

    Direction(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
