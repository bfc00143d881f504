package org.stockcutting.bench.peers;

import org.stockcutting.solve.instance.Instance;

/**
 * A stretch of one board, or one sheet: a value of the planning variable.
 *
 * @param id its number among all bins
 * @param board number of the board it belongs to
 * @param segment which stretch of the board, 0 for a sheet
 */
record OptaBin(int id, int board, int stock, int segment, long capacity, long cost, Instance instance) {

    boolean isLine() {
        return capacity > 0;
    }

    /** By number: the engine groups by bin, and every run is to be the same. */
    @Override
    public int hashCode() {
        return id;
    }

    @Override
    public boolean equals(Object other) {
        return this == other;
    }
}
