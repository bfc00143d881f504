package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
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
 * @param rows further such worths, each of which may rule out purchases
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
        List<SortedMap<String, BigFraction>> rows,
        @Nullable BigInteger searchedBound,
        boolean provedPlacement,
        long work,
        boolean cutShort) {

    public SolvedComponent {
        boards = List.copyOf(boards);
        asCut = List.copyOf(asCut);
        duals = Collections.unmodifiableSortedMap(new TreeMap<>(duals));
        rows = rows.stream()
                .map(row -> Collections.unmodifiableSortedMap(new TreeMap<>(row)))
                .toList();
    }

    /** With one list of duals. */
    public SolvedComponent(
            Component component,
            List<Board> boards,
            List<Board> asCut,
            SortedMap<String, BigFraction> duals,
            @Nullable BigInteger searchedBound,
            boolean provedPlacement,
            long work,
            boolean cutShort) {
        this(component, boards, asCut, duals, List.of(), searchedBound, provedPlacement, work, cutShort);
    }

    /** What all of these propose for the certificate: their duals together, then their first rows, and so on. */
    public static List<Map<String, BigFraction>> proposals(List<SolvedComponent> solved) {
        List<Map<String, BigFraction>> proposals = new ArrayList<>();
        proposals.add(new TreeMap<>());
        for (SolvedComponent component : solved) {
            proposals.get(0).putAll(component.duals);
            for (int i = 0; i < component.rows.size(); i++) {
                if (proposals.size() <= i + 1) {
                    proposals.add(new TreeMap<>());
                }
                proposals.get(i + 1).putAll(component.rows.get(i));
            }
        }
        return proposals;
    }

    /** The same after so much work. */
    SolvedComponent after(long steps, boolean isCutShort) {
        return new SolvedComponent(
                component, boards, asCut, duals, rows, searchedBound, provedPlacement, steps, isCutShort);
    }

    /** Nothing placed yet. */
    public static SolvedComponent untouched(Component component) {
        return new SolvedComponent(component, List.of(), List.of(), new TreeMap<>(), null, false, 0, false);
    }
}
