package org.stockcutting.solve.guillotine;

/**
 * Where a label of {@link LabelTable} comes from, in one word: its kind, whether a smaller rectangle holds it too, and the piece or the one
 * or two labels that it is made of. Tables have a million of them.
 */
final class LabelOrigin {

    static final int PIECE = 0;
    /** The label of the next smaller rectangle. */
    static final int SMALLER = 1;

    static final int ACROSS = 2;
    static final int ALONG = 3;
    /** No rectangle that is less across, or along, holds it. */
    static final long TIGHT_ACROSS = 4;

    static final long TIGHT_ALONG = 8;

    private static final int KINDS = 3;
    private static final int FIRST = 4;
    private static final int SECOND = 34;
    private static final long LABEL = (1L << 30) - 1;

    private LabelOrigin() {}

    static long of(int kind, int one, int other) {
        return kind | TIGHT_ACROSS | TIGHT_ALONG | (long) one << FIRST | (long) other << SECOND;
    }

    static int kind(long origin) {
        return (int) origin & KINDS;
    }

    static int one(long origin) {
        return (int) (origin >>> FIRST & LABEL);
    }

    static int other(long origin) {
        return (int) (origin >>> SECOND & LABEL);
    }
}
