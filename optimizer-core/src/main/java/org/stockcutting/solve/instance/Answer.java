package org.stockcutting.solve.instance;

import java.util.List;

/**
 * What an engine found for an instance.
 *
 * @param uses which patterns are cut how often; together they place at most every item's demand
 * @param unplaced how many of each item type are missing
 * @param duals a proposal for the certificate: worth of one piece of each item type in cost units, at least 0; the checker makes the
 *     proof, so it need not be exact
 * @param rows further such lists: for each, so many boards of each stock hold at most so much of its worth, which rules out purchases
 * @param provedPlacement true if exact search showed that no more weight can be placed
 * @param searchedBound least cost that exact search allows for the most weight placed, in cost units; {@link #NO_BOUND} if none
 */
public record Answer(
        List<PatternUse> uses,
        List<Integer> unplaced,
        List<Double> duals,
        List<List<Double>> rows,
        boolean provedPlacement,
        long searchedBound) {

    public static final long NO_BOUND = Long.MIN_VALUE;

    public Answer {
        uses = List.copyOf(uses);
        unplaced = List.copyOf(unplaced);
        duals = List.copyOf(duals);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** With one list of duals. */
    public Answer(
            List<PatternUse> uses,
            List<Integer> unplaced,
            List<Double> duals,
            boolean provedPlacement,
            long searchedBound) {
        this(uses, unplaced, duals, List.of(), provedPlacement, searchedBound);
    }

    /**
     * One pattern and how often it is cut.
     *
     * @param stock index of the stock type
     * @param copies how many boards, at least 1
     * @param layout how each is cut
     */
    public record PatternUse(int stock, int copies, Region layout) {}
}
