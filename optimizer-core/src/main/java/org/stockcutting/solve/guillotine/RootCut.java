package org.stockcutting.solve.guillotine;

/**
 * Which way a board is cut first. The shop may forbid one way; where it does not, the search decides board by board: a rest is worth
 * more when it is crosscut first, nearly always, yet long strips free of zones come from ripping first. So it is not left to the worth.
 */
enum RootCut {
    ANY,
    CROSSCUT,
    RIP;

    /** True if a tree with this root obeys. */
    boolean allows(Cell root) {
        return this == ANY || !root.isSplit() || root.crosscut == (this == CROSSCUT);
    }
}
