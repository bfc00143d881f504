package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;

/**
 * Combinations of ways to buy the stock of a component that is sold in packs or with price breaks. A combination is the number of a way
 * for each such stock, in their order.
 */
final class WaysToBuy {

    /** More combinations are not listed. */
    private static final int MOST_COMBINATIONS = 4_096;

    private final List<StockType> stocks;
    private final List<Integer> at = new ArrayList<>();
    private final List<Staircase> stairs = new ArrayList<>();
    private final List<List<Staircase.Way>> ways = new ArrayList<>();

    /**
     * @param all one for each stock, null where it has one price
     * @param stocks the stock types
     * @param pieces how many pieces are wanted: no more boards are of use
     */
    WaysToBuy(List<@Nullable Staircase> all, List<StockType> stocks, int pieces) {
        this.stocks = stocks;
        for (int s = 0; s < all.size(); s++) {
            Staircase stair = all.get(s);
            if (stair != null) {
                at.add(s);
                stairs.add(stair);
                ways.add(stair.ways(pieces));
            }
        }
    }

    /**
     * Stock types of a combination.
     *
     * @param types those of the component, then those at the price of more boards
     * @param origins which stock of the component each is
     */
    record Stocks(List<StockType> types, List<Integer> origins) {}

    boolean areFew() {
        long count = 1;
        for (List<Staircase.Way> list : ways) {
            count *= list.size();
            if (count > MOST_COMBINATIONS) {
                return false;
            }
        }
        return true;
    }

    /** Every combination. */
    List<int[]> all() {
        List<int[]> all = new ArrayList<>();
        int[] next = new int[ways.size()];
        while (true) {
            all.add(next.clone());
            int k = ways.size() - 1;
            while (k >= 0 && ++next[k] == ways.get(k).size()) {
                next[k--] = 0;
            }
            if (k < 0) {
                return all;
            }
        }
    }

    /** The ways in which the boards of a plan are bought, and those that differ from them by a step, or to nothing, in one or two stocks. */
    List<int[]> near(int[] used) {
        int[] start = taken(used);
        List<int[]> near = new ArrayList<>(List.of(start));
        for (int a = 0; a < start.length; a++) {
            for (int one : steps(start[a], a)) {
                int[] changed = start.clone();
                changed[a] = one;
                near.add(changed);
                for (int b = a + 1; b < start.length && near.size() < MOST_COMBINATIONS; b++) {
                    for (int other : steps(start[b], b)) {
                        int[] twice = changed.clone();
                        twice[b] = other;
                        near.add(twice);
                    }
                }
            }
        }
        return near;
    }

    private List<Integer> steps(int from, int stock) {
        List<Integer> steps = new ArrayList<>();
        if (from > 1) {
            steps.add(0);
        }
        if (from > 0) {
            steps.add(from - 1);
        }
        if (from + 1 < ways.get(stock).size()) {
            steps.add(from + 1);
        }
        return steps;
    }

    /** The ways in which the boards of a plan are bought. */
    int[] taken(int[] used) {
        int[] taken = new int[at.size()];
        for (int k = 0; k < taken.length; k++) {
            int boards = used[at.get(k)];
            long paid = stairs.get(k).paid(boards);
            List<Staircase.Way> list = ways.get(k);
            for (int w = list.size() - 1; w >= 0; w--) {
                Staircase.Way way = list.get(w);
                long more = Math.max(0, boards - way.free());
                boolean does = more == 0 || way.more() != Staircase.NONE;
                if (does && way.paid() + more * Math.max(0, way.more()) <= paid) {
                    taken[k] = w;
                    break;
                }
            }
        }
        return taken;
    }

    /** What is paid in any case. */
    long paid(int[] combination) {
        long paid = 0;
        for (int k = 0; k < combination.length; k++) {
            paid += ways.get(k).get(combination[k]).paid();
        }
        return paid;
    }

    /**
     * No plan of a combination comes to less: of what all boards come to at the least prices, its paid boards can take no more than
     * they come to at these.
     *
     * @param lower what all boards come to at the least prices
     */
    long bound(int[] combination, long lower) {
        long taken = 0;
        for (int k = 0; k < combination.length; k++) {
            long free = ways.get(k).get(combination[k]).free();
            taken += free * stocks.get(at.get(k)).cost();
        }
        return paid(combination) + Math.max(0, lower - taken);
    }

    Stocks stocks(int[] combination) {
        List<StockType> types = new ArrayList<>(stocks);
        List<Integer> origins = new ArrayList<>();
        for (int s = 0; s < stocks.size(); s++) {
            origins.add(s);
        }
        for (int k = 0; k < combination.length; k++) {
            int s = at.get(k);
            StockType type = stocks.get(s);
            Staircase.Way way = ways.get(k).get(combination[k]);
            types.set(s, StaircaseSearch.priced(type, 0, way.free()));
            boolean unlimited = type.copies() == StockType.UNLIMITED;
            if (way.more() != Staircase.NONE && (unlimited || type.copies() > way.free())) {
                int more = unlimited ? StockType.UNLIMITED : type.copies() - way.free();
                types.add(StaircaseSearch.priced(type, way.more(), more));
                origins.add(s);
            }
        }
        return new Stocks(types, origins);
    }

    static int distance(int[] one, int[] other) {
        int distance = 0;
        for (int k = 0; k < one.length; k++) {
            distance += Math.abs(one[k] - other[k]);
        }
        return distance;
    }

    /** True if the other has at least as many paid boards of each stock, and no higher prices for more. */
    static boolean isWithin(int[] one, int[] other) {
        for (int k = 0; k < one.length; k++) {
            if (one[k] > other[k]) {
                return false;
            }
        }
        return true;
    }
}
