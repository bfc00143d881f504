package org.stockcutting.solve.guillotine;

/** The model with one empty board and the saw rules of every stock, and a count of the elementary operations done on them. */
final class Yard {

    final Model model;
    private final SawRules[] rules;
    private final boolean[] free;
    private final boolean[] ordered;
    private final Board[] empty;
    private long operations;

    Yard(Model model) {
        this.model = model;
        this.rules = new SawRules[model.stocks];
        this.free = new boolean[model.stocks];
        this.ordered = new boolean[model.stocks];
        this.empty = new Board[model.stocks];
        for (int s = 0; s < model.stocks; s++) {
            rules[s] = new SawRules(model, s);
            free[s] = rules[s].allowEverything();
            ordered[s] = rules[s].ordered();
        }
        for (int s = 0; s < model.stocks; s++) {
            empty[s] = new Board(this, s, Cell.rest(model.boardLength(s), model.boardWidth(s)));
        }
    }

    Board empty(int s) {
        return empty[s];
    }

    SawRules rules(int s) {
        return rules[s];
    }

    /** True if the shop's saws can cut this tree. */
    boolean allows(int s, Cell root) {
        if (free[s]) {
            return true;
        }
        count(20L * root.pieces);
        return rules[s].allow(root);
    }

    boolean isFree(int s) {
        return free[s];
    }

    boolean isOrdered(int s) {
        return ordered[s];
    }

    /** True if the parts of a cut may change places. */
    boolean isMovable(int s) {
        return !model.hasZones(s);
    }

    void count(long more) {
        operations += more;
    }

    /** Operations since the last call. */
    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
