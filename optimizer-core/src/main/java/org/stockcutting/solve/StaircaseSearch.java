package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;
import org.stockcutting.stock.StockItem;

/**
 * Plans a component some of whose stock is sold in packs or with price breaks. Engines know one price a board, so they are asked several
 * times: at the least that a board can come to, which bounds every plan from below; at what boards came to in the plan just found, until
 * that repeats; then for one combination after the other of the ways to buy ({@link Staircase.Way}), boards that are paid already for
 * nothing. A combination is left out where a bound shows that it cannot be cheaper: what the least prices prove, less what its paid
 * boards can take of that; or what was proved for one with more boards and lower prices. Where every combination is tried to the end or
 * left out, the plan is proved the cheapest.
 */
final class StaircaseSearch {

    /** Turns of pricing by the plan just found. */
    private static final int MOST_TURNS = 4;
    /** Passes over the combinations near the best plan, where all of them are too many. */
    private static final int MOST_PASSES = 3;
    /** Shares of the work: the least prices, one turn, all combinations, one of them, fewest boards. */
    private static final int LEAST_SHARE = 4;

    private static final int TURN_SHARE = 16;
    private static final int WAYS_SHARE = 3;
    private static final int WAY_SHARE = 24;
    private static final int FEWEST_SHARE = 24;
    /** Further worths that are proposed for the certificate. */
    private static final int MOST_ROWS = 4;
    /** With more bits single boards are not counted beside money. */
    private static final int MOST_BITS = 44;

    private final Reduced reduced;
    private final Instance instance;
    private final EngineLadder ladder;
    private final Function<Answer, int[]> finished;
    private final WorkMeter meter;
    private final long limit;
    private final long share;
    private final long seed;
    private final Engine.EngineListener listener;
    /** One for each stock; null where it has one price. */
    private final List<@Nullable Staircase> stairs = new ArrayList<>();

    private final int pieces;
    /** Worths of the pieces at the prices that engines were asked with, in the order of asking. */
    private final Set<List<Double>> worths = new LinkedHashSet<>();

    private Found best;

    /** An answer, the weight that it leaves out, and what it comes to. */
    private record Found(Answer answer, long missing, long paid) {
        boolean isBetterThan(Found other) {
            return missing < other.missing || (missing == other.missing && paid < other.paid);
        }
    }

    StaircaseSearch(
            Reduced reduced,
            Goal goal,
            EngineLadder ladder,
            Function<Answer, int[]> finished,
            WorkMeter meter,
            long limit,
            long seed,
            Engine.EngineListener listener) {
        this.reduced = reduced;
        this.instance = reduced.instance();
        this.ladder = ladder;
        this.finished = finished;
        this.meter = meter;
        this.limit = limit;
        this.share = Math.min(limit, meter.left());
        this.seed = seed;
        this.listener = listener;
        for (StockItem item : reduced.stock()) {
            boolean stair = Staircase.isOne(item, goal);
            stairs.add(stair && item instanceof StockItem.ForSale sold ? new Staircase(sold, goal) : null);
        }
        this.pieces = instance.items().stream().mapToInt(ItemType::demand).sum();
        List<Integer> none = instance.items().stream().map(ItemType::demand).toList();
        this.best = found(new Answer(List.of(), none, List.of(), false, Answer.NO_BOUND));
    }

    /** True if some stock of a component has no plain price under the goal. */
    static boolean suits(Reduced reduced, Goal goal) {
        return reduced.costUnit().equals(BigInteger.ONE)
                && reduced.stock().stream().anyMatch(item -> Staircase.isOne(item, goal));
    }

    Answer run() {
        WorkMeter first = meter.head(share / LEAST_SHARE);
        Answer base = solve(instance.stocks(), null, first);
        meter.absorb(first);
        take(base);
        long lower = base.searchedBound() == Answer.NO_BOUND ? 0 : Math.max(0, base.searchedBound());
        if (best.paid > lower) {
            turns();
        }
        // A bound is known for the most wood only where nothing is missing, or what is missing was proved to be.
        boolean bounded = best.missing == 0 || base.provedPlacement();
        long proved = best.paid > lower ? combinations(bounded ? lower : 0) : best.paid;
        fewestBoards();
        Answer better = ladder.frozen(owned(), best.answer, meter, limit, seed);
        Answer last = best.isBetterThan(found(better)) ? best.answer : better;
        return new Answer(
                last.uses(),
                last.unplaced(),
                base.duals(),
                rows(base),
                base.provedPlacement(),
                bounded ? Math.min(proved, best.paid) : Answer.NO_BOUND);
    }

    private void turns() {
        long[] before = new long[0];
        for (int turn = 0; turn < MOST_TURNS && !meter.isExhausted(); turn++) {
            int[] used = used(best.answer);
            long[] costs = new long[stairs.size()];
            List<StockType> stocks = new ArrayList<>(instance.stocks());
            for (int s = 0; s < costs.length; s++) {
                Staircase stair = stairs.get(s);
                if (stair != null) {
                    int boards = used[s] > 0 ? used[s] : stair.item().offer().pack();
                    costs[s] = -Math.floorDiv(-stair.paid(boards), boards);
                    stocks.set(s, priced(stocks.get(s), costs[s], stocks.get(s).copies()));
                }
            }
            if (Arrays.equals(costs, before)) {
                return;
            }
            before = costs;
            WorkMeter part = meter.part(share / TURN_SHARE);
            take(solve(stocks, null, part));
            meter.absorb(part);
        }
    }

    /** Tries combinations; returns the least that any plan comes to. */
    private long combinations(long lower) {
        WaysToBuy ways = new WaysToBuy(stairs, instance.stocks(), pieces);
        WorkMeter part = meter.part(share / WAYS_SHARE);
        WaysToBuy.Promising promising = ways.below(lower, best.paid);
        // What is not among all of them comes to no less than the plan at hand.
        long tried = Math.min(best.paid, tryAll(ways, promising.combinations(), lower, part));
        long before = Long.MAX_VALUE;
        for (int pass = 0;
                pass < MOST_PASSES && !promising.all() && best.paid < before && !part.isExhausted();
                pass++) {
            before = best.paid;
            tryAll(ways, ways.near(used(best.answer)), lower, part);
        }
        long proved = promising.all() ? tried : lower;
        meter.absorb(part);
        return proved;
    }

    private long tryAll(WaysToBuy ways, List<int[]> combinations, long lower, WorkMeter part) {
        int[] start = ways.taken(used(best.answer));
        List<int[]> inOrder = new ArrayList<>(combinations);
        inOrder.sort(java.util.Comparator.<int[]>comparingLong(c -> ways.bound(c, lower))
                .thenComparingInt(c -> WaysToBuy.distance(c, start)));
        List<int[]> tried = new ArrayList<>();
        List<Long> rest = new ArrayList<>();
        long proved = Long.MAX_VALUE;
        for (int[] combination : inOrder) {
            long bound = ways.bound(combination, lower);
            for (int t = 0; t < tried.size() && bound < best.paid; t++) {
                if (WaysToBuy.isWithin(combination, tried.get(t))) {
                    long more = rest.get(t);
                    bound = more == Long.MAX_VALUE ? more : Math.max(bound, ways.paid(combination) + more);
                }
            }
            if (bound < best.paid && !part.isExhausted()) {
                WorkMeter own = part.part(share / WAY_SHARE);
                long beside = tryOne(ways, combination, own);
                part.absorb(own);
                if (beside >= 0) {
                    tried.add(combination);
                    rest.add(beside);
                    bound = beside == Long.MAX_VALUE ? beside : Math.max(bound, ways.paid(combination) + beside);
                }
            }
            proved = Math.min(proved, bound);
        }
        return Math.max(lower, proved);
    }

    /** What must at least be paid beside what the combination pays in any case; negative if nothing is known. */
    private long tryOne(WaysToBuy ways, int[] combination, WorkMeter part) {
        WaysToBuy.Stocks stocks = ways.stocks(combination);
        Answer answer = solve(stocks.types(), stocks.origins(), part);
        take(answer);
        long missing = missing(answer);
        if (missing > best.missing) {
            return answer.provedPlacement() ? Long.MAX_VALUE : -1;
        }
        return answer.searchedBound() == Answer.NO_BOUND ? -1 : Math.max(0, answer.searchedBound());
    }

    /** Of what is paid already as few boards as possible are cut: the others stay whole. */
    private void fewestBoards() {
        long many = pieces + 1L;
        long dearest =
                instance.stocks().stream().mapToLong(StockType::cost).max().orElse(0);
        if (BigInteger.valueOf(many).multiply(BigInteger.valueOf(dearest)).bitLength() > MOST_BITS) {
            return;
        }
        int[] used = used(best.answer);
        List<StockType> stocks = new ArrayList<>();
        for (int s = 0; s < stairs.size(); s++) {
            StockType type = instance.stocks().get(s);
            stocks.add(
                    stairs.get(s) == null ? priced(type, type.cost() * many, type.copies()) : priced(type, 1, used[s]));
        }
        WorkMeter part = meter.part(share / FEWEST_SHARE);
        Answer answer = solve(stocks, null, part);
        meter.absorb(part);
        Found found = found(answer);
        if (!best.isBetterThan(found)) {
            best = found;
        }
    }

    /** The component with no more of these boards than the best plan cuts, all paid. */
    private Reduced owned() {
        int[] used = used(best.answer);
        List<StockType> stocks = new ArrayList<>();
        for (int s = 0; s < stairs.size(); s++) {
            StockType type = instance.stocks().get(s);
            stocks.add(stairs.get(s) == null ? type : priced(type, 0, used[s]));
        }
        return new Reduced(
                with(stocks),
                reduced.members(),
                reduced.stock(),
                reduced.unitX(),
                reduced.unitY(),
                reduced.costUnit(),
                reduced.leastOffcut(),
                reduced.exact());
    }

    /** @param origins which stock of the component each type is, or null where they are the component's own */
    private Answer solve(List<StockType> stocks, @Nullable List<Integer> origins, WorkMeter part) {
        Answer answer = ladder.patterns(
                with(stocks),
                reduced.hasStaves(),
                found -> finished.apply(home(found, origins)),
                part,
                part.left(),
                seed,
                Engine.EngineListener.NONE);
        return home(answer, origins);
    }

    private static Answer home(Answer answer, @Nullable List<Integer> origins) {
        if (origins == null) {
            return answer;
        }
        List<Answer.PatternUse> uses = answer.uses().stream()
                .map(use -> new Answer.PatternUse(origins.get(use.stock()), use.copies(), use.layout()))
                .toList();
        return new Answer(
                uses,
                answer.unplaced(),
                answer.duals(),
                answer.rows(),
                answer.provedPlacement(),
                answer.searchedBound());
    }

    private Instance with(List<StockType> stocks) {
        return new Instance(
                instance.items(),
                stocks,
                instance.crosscutKerf(),
                instance.ripKerf(),
                instance.limits(),
                instance.keep(),
                instance.groups());
    }

    static StockType priced(StockType type, long cost, int copies) {
        return new StockType(
                type.length(),
                type.width(),
                type.rawEnd(),
                type.rawFarEdge(),
                cost,
                copies,
                type.offcutValue(),
                type.zones(),
                type.places());
    }

    /** Worths at other prices than the least: together they may rule out purchases that none of them does alone. */
    private List<List<Double>> rows(Answer base) {
        List<List<Double>> rows = new ArrayList<>(base.rows());
        worths.remove(base.duals());
        worths.stream().limit(MOST_ROWS).forEach(rows::add);
        return rows;
    }

    private void take(Answer answer) {
        if (answer.duals().stream().anyMatch(worth -> worth > 0)) {
            worths.add(answer.duals());
        }
        Found found = found(answer);
        if (found.isBetterThan(best)) {
            best = found;
            listener.improved(answer, found.paid);
        }
    }

    private Found found(Answer answer) {
        int[] used = used(answer);
        long paid = 0;
        for (int s = 0; s < used.length; s++) {
            Staircase stair = stairs.get(s);
            paid += stair == null ? used[s] * instance.stocks().get(s).cost() : stair.paid(used[s]);
        }
        return new Found(answer, missing(answer), paid);
    }

    private int[] used(Answer answer) {
        int[] used = new int[stairs.size()];
        answer.uses().forEach(use -> used[use.stock()] += use.copies());
        return used;
    }

    private long missing(Answer answer) {
        long weight = 0;
        for (int i = 0; i < instance.items().size(); i++) {
            weight += instance.items().get(i).weight() * answer.unplaced().get(i);
        }
        return weight;
    }
}
