package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;

/**
 * Combinations of ways to buy the stock of a component that is sold in packs or with price breaks. A combination is the number of a way
 * for each such stock, in their order.
 */
final class WaysToBuy {

    /** More combinations are not tried. */
    private static final int MOST_COMBINATIONS = 4_096;
    /** More beginnings of combinations are not looked at. */
    private static final int MOST_LOOKED = 1_000_000;

    private final List<StockType> stocks;
    private final int pieces;
    /** True if something for sale has one price. */
    private final boolean hasPlain;

    private int looked;
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
        this.pieces = pieces;
        boolean plain = false;
        for (int s = 0; s < all.size(); s++) {
            Staircase stair = all.get(s);
            if (stair != null) {
                at.add(s);
                stairs.add(stair);
                ways.add(stair.ways(pieces));
            }
            plain |= stair == null && stocks.get(s).cost() > 0;
        }
        this.hasPlain = plain;
    }

    /**
     * Stock types of a combination.
     *
     * @param types those of the component, then those at the price of more boards
     * @param origins which stock of the component each is
     */
    record Stocks(List<StockType> types, List<Integer> origins) {}

    /**
     * Combinations that may come to less than a plan at hand.
     *
     * @param combinations the most promising ones
     * @param all true if there are no others
     */
    record Promising(List<int[]> combinations, boolean all) {}

    /**
     * Looks for them.
     *
     * @param lower what all boards come to at the least prices
     * @param paid what the plan comes to
     */
    Promising below(long lower, long paid) {
        PriorityQueue<Bounded> kept = new PriorityQueue<>(Comparator.comparingLong((Bounded one) -> -one.bound));
        boolean all = collect(new int[ways.size()], 0, lower, paid, kept);
        return new Promising(kept.stream().map(Bounded::combination).toList(), all);
    }

    private record Bounded(int[] combination, long bound) {}

    /** Goes deeper where the ways of the first stocks leave room at the least prices; false if some had to be left out. */
    private boolean collect(int[] combination, int next, long lower, long paid, PriorityQueue<Bounded> kept) {
        if (next == combination.length) {
            long bound = bound(combination, lower);
            if (bound < paid) {
                kept.add(new Bounded(combination.clone(), bound));
            }
            return kept.size() <= MOST_COMBINATIONS || kept.poll() == null;
        }
        boolean all = true;
        for (int way = 0; way < ways.get(next).size(); way++) {
            combination[next] = way;
            if (paid(combination, next + 1) + Math.max(0, lower - taken(combination, next + 1)) >= paid) {
                continue;
            }
            if (++looked > MOST_LOOKED) {
                return false;
            }
            all &= collect(combination, next + 1, lower, paid, kept);
        }
        return all;
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
        return paid(combination, combination.length);
    }

    private long paid(int[] combination, int first) {
        long paid = 0;
        for (int k = 0; k < first; k++) {
            paid += ways.get(k).get(combination[k]).paid();
        }
        return paid;
    }

    /** What boards that are paid in any case can take at the least prices. */
    private long taken(int[] combination, int first) {
        long taken = 0;
        for (int k = 0; k < first; k++) {
            int free = ways.get(k).get(combination[k]).free();
            taken += Math.min(free, pieces) * stocks.get(at.get(k)).cost();
        }
        return taken;
    }

    /**
     * No plan of a combination comes to less: of what all boards come to at the least prices, its paid boards can take no more than
     * they come to at these, and the rest has its own prices.
     *
     * @param lower what all boards come to at the least prices
     * @return {@link Long#MAX_VALUE} where nothing but paid boards can be had, and they are not enough
     */
    long bound(int[] combination, long lower) {
        long paid = paid(combination);
        long rest = lower - taken(combination, combination.length);
        if (rest <= 0) {
            return paid;
        }
        long least = hasPlain ? rest : Long.MAX_VALUE;
        for (int k = 0; k < combination.length; k++) {
            long more = ways.get(k).get(combination[k]).more();
            long cost = stocks.get(at.get(k)).cost();
            if (more != Staircase.NONE && cost > 0) {
                least = Math.min(least, -Math.floorDiv(-Math.multiplyExact(rest, more), cost));
            }
        }
        return least == Long.MAX_VALUE ? least : paid + least;
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
