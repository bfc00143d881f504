package org.stockcutting.solve.guillotine;

import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * How a part of a board is cut around bad zones, as far as that has to do with them: first at a place, or at none, where what is left is
 * clear or is crosscut at the ends of all its zones. Places are those of the board, so that the tree of cuts can be tried again whatever
 * pieces are worth by then.
 *
 * @param first what is cut first; null for no cut
 */
record CutTree(CutTree.@Nullable Cut first) {

    static final CutTree NO_CUT = new CutTree(null);

    /**
     * A cut through a whole part of a board.
     *
     * @param crosscut true for a crosscut, false for a rip
     * @param at padded place
     * @param before how the part before it is cut
     * @param behind how the part behind it is cut
     */
    record Cut(boolean crosscut, int at, CutTree before, CutTree behind) {}

    static CutTree of(boolean crosscut, int at, CutTree before, CutTree behind) {
        return new CutTree(new Cut(crosscut, at, before, behind));
    }

    /** The places of all crosscuts, or of all rips. */
    Set<Integer> places(boolean crosscuts) {
        Set<Integer> places = new TreeSet<>();
        addPlaces(crosscuts, places);
        return places;
    }

    private void addPlaces(boolean crosscuts, Set<Integer> places) {
        if (first != null) {
            if (first.crosscut == crosscuts) {
                places.add(first.at);
            }
            first.before.addPlaces(crosscuts, places);
            first.behind.addPlaces(crosscuts, places);
        }
    }
}
