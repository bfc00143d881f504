package org.stockcutting.solve.search;

/** One board that pieces may lie on: value of the planning variable. */
final class Board {

    private final int id;
    private final StockFacts facts;

    Board(int id, StockFacts facts) {
        this.id = id;
        this.facts = facts;
    }

    int id() {
        return id;
    }

    StockFacts facts() {
        return facts;
    }

    /** The engine groups by board: its number, not its address, so that every run is the same. */
    @Override
    public int hashCode() {
        return id;
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public String toString() {
        return "board " + id + " of stock " + facts.index();
    }
}
