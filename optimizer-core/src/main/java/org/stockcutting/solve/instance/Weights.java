package org.stockcutting.solve.instance;

/** What each kind of step weighs. Change a weight, change the version: plans name it. */
public final class Weights {

    /** Goes into every plan document. */
    public static final int VERSION = 1;
    /** Elementary operations (inner loop turns of a dynamic programme, entries of a simplex pivot) in one step. */
    public static final long OPERATIONS_PER_STEP = 1_000;
    /** Steps of one move of the constraint solver. */
    public static final long SEARCH_MOVE = 6;

    private Weights() {}

    /** Steps for this many elementary operations, at least one. */
    public static long of(long operations) {
        return 1 + operations / OPERATIONS_PER_STEP;
    }
}
