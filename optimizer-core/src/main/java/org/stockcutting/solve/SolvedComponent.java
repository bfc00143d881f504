package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.layout.Board;

/**
 * What is known about one component.
 *
 * @param component what was to be placed on what
 * @param boards the boards to cut, pushed together
 * @param asCut the same boards with every rest where the engine has it, for where a saw limit forbids the others
 * @param duals proposed worth of one rough piece of each part (for a panel: of one nanometre of its width), atomic units of the goal
 * @param searchedBound least sum of stock costs by exact search in atomic units, or null; always null under the goal waste
 * @param provedPlacement true if exact search showed that no more can be placed
 * @param work weighted steps used
 * @param cutShort true if the clock or a cancel ended the search
 */
public record SolvedComponent(
        Component component,
        List<Board> boards,
        List<Board> asCut,
        SortedMap<String, BigFraction> duals,
        @Nullable BigInteger searchedBound,
        boolean provedPlacement,
        long work,
        boolean cutShort) {

    public SolvedComponent {
        boards = List.copyOf(boards);
        asCut = List.copyOf(asCut);
        duals = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(duals));
    }

    /** The same after so much work. */
    SolvedComponent after(long steps, boolean isCutShort) {
        return new SolvedComponent(component, boards, asCut, duals, searchedBound, provedPlacement, steps, isCutShort);
    }

    /** Nothing placed yet. */
    public static SolvedComponent untouched(Component component) {
        return new SolvedComponent(component, List.of(), List.of(), new TreeMap<>(), null, false, 0, false);
    }
}
