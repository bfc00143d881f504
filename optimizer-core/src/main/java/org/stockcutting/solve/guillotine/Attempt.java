package org.stockcutting.solve.guillotine;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * One search of one instance: a handful of pieces exactly; more by shelves and best fit to begin with, then as {@link Turns} has it. It
 * may begin with what another search of the same boards and pieces has found.
 */
final class Attempt {

    /** Building drafts on every stock alone costs a full draft each; with more stocks only the cheapest are tried. */
    private static final int MOST_STOCK_STARTS = 12;

    final Yard yard;
    private final Instance instance;
    private final long seed;
    private @Nullable Turns turns;

    Attempt(Instance instance, long seed) {
        this.instance = instance;
        this.seed = seed;
        this.yard = new Yard(new Model(instance));
    }

    /** @param known a search whose patterns may be cut here too, null for none */
    Answer run(WorkMeter meter, @Nullable Attempt known, Engine.EngineListener listener) {
        Model model = yard.model;
        AreaBound bound = new AreaBound(model);
        SmallSearch small = SmallSearch.suits(model) ? new SmallSearch(yard, meter) : null;
        if (small != null && small.isExact() && !model.paysOffcuts) {
            Answer answer = new Answers(bound).exact(small.best());
            listener.improved(answer, small.best().cost());
            return answer;
        }
        Draft start = start(yard, bound, meter);
        if (small != null && small.best().isBetterThan(start)) {
            start = small.best();
        }
        Turns earlier = known == null ? null : known.turns;
        if (earlier != null) {
            start = better(start, earlier.best().on(yard));
        }
        turns = new Turns(yard, bound, start, seed, listener);
        if (earlier != null) {
            turns.learn(earlier);
        }
        turns.run(meter);
        return turns.answer(small != null && small.isExact());
    }

    /** True if no plan can be better. */
    boolean isProved() {
        return turns == null || turns.isProved();
    }

    /** The answer once another search of the same boards and pieces has come to an end as well: the better plan of the two. */
    Answer answer(Attempt other) {
        if (turns == null || other.turns == null) {
            throw new IllegalStateException("not run, or so few pieces that there was no search");
        }
        turns.take(other.turns);
        return turns.answer(false);
    }

    private static Draft start(Yard yard, AreaBound bound, WorkMeter meter) {
        Filling filling = new Filling(yard);
        List<RootCut> firsts = yard.choosesFirstCut() ? List.of(RootCut.RIP, RootCut.CROSSCUT) : List.of(RootCut.ANY);
        Draft best = filling.build(Filling.Order.AREA, Filling.BEST_TRIAL, firsts.get(0));
        meter.spend(Weights.of(yard.takeOperations()));
        for (RootCut first : firsts) {
            for (Filling.Order order : Filling.Order.values()) {
                boolean done = order == Filling.Order.AREA && first == firsts.get(0);
                if (!done && !meter.isExhausted()) {
                    best = better(best, filling.build(order, Filling.BEST_TRIAL, first));
                    meter.spend(Weights.of(yard.takeOperations()));
                }
            }
        }
        int stocks = Math.min(yard.model.stocks, MOST_STOCK_STARTS);
        for (int s : bound.cheapestFirst().subList(0, stocks)) {
            best = alone(yard, filling, s, firsts, best, meter);
        }
        if (!yard.model.paysOffcuts) {
            filling.moveToCheaper(best);
        }
        meter.spend(Weights.of(yard.takeOperations()));
        return best;
    }

    private static Draft alone(
            Yard yard, Filling filling, int stock, List<RootCut> firsts, Draft known, WorkMeter meter) {
        Draft best = known;
        if (meter.isExhausted()) {
            return best;
        }
        Draft shelves = ShelfStart.on(yard, stock);
        if (shelves != null) {
            best = better(best, shelves);
        }
        // From a full rack, boards that cost nothing come first anyway.
        boolean pays = yard.model.stocks <= MOST_STOCK_STARTS
                || yard.model.stock(stock).cost() > 0;
        for (Filling.Order order : List.of(Filling.Order.LONG_SIDE, Filling.Order.WIDTH)) {
            if (pays && yard.model.stocks > 1 && meter.spend(Weights.of(yard.takeOperations()))) {
                best = better(best, filling.build(order, stock, firsts.get(0)));
            }
        }
        return best;
    }

    private static Draft better(Draft best, Draft other) {
        return other.isBetterThan(best) ? other : best;
    }
}
