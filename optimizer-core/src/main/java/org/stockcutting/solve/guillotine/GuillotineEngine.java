package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import java.util.List;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * The engine for boards that are ripped and for sheets: a handful of pieces exactly, more by shelves, best fit, and then ruin and
 * recreate, until the cost meets the area bound, patience ends or the meter does.
 *
 * <p>Not here yet: bounds beyond area (column generation with an exact guillotine dynamic programme), and diving for one board less.
 */
public final class GuillotineEngine implements Engine {

    /** Building drafts on every stock alone costs a full draft each; with more stocks only the cheapest are tried. */
    private static final int MOST_STOCK_STARTS = 12;

    @Override
    public Answer solve(Instance instance, WorkMeter meter, long seed, EngineListener listener) {
        Model model = new Model(instance);
        Yard yard = new Yard(model);
        AreaBound bound = new AreaBound(model);
        SmallSearch small = SmallSearch.suits(model) ? new SmallSearch(yard, meter) : null;
        if (small != null && small.isExact() && !model.paysOffcuts) {
            Answer answer =
                    answer(model, small.best(), bound, true, small.best().cost());
            listener.improved(answer, small.best().cost());
            return answer;
        }
        Draft start = start(yard, bound, meter);
        if (small != null && small.best().isBetterThan(start)) {
            start = small.best();
        }
        listener.improved(answer(model, start, bound, false, Answer.NO_BOUND), start.cost());
        TreeSearch search = new TreeSearch(yard, bound, start, seed);
        search.run(
                meter,
                patience(instance),
                best -> listener.improved(answer(model, best, bound, false, Answer.NO_BOUND), best.cost()));
        Draft best = search.best();
        boolean proved = (small != null && small.isExact()) || isAllPlaceable(best, model);
        return answer(model, best, bound, proved, searchedBound(best, bound));
    }

    /** Moves without gain after which the search ends: few for small jobs, more than any usual meter allows for large ones. */
    private static long patience(Instance instance) {
        long pieces = instance.items().stream().mapToLong(i -> i.demand()).sum();
        return 500 + 15 * Math.min(pieces, 100_000) * Math.min(pieces, 100_000);
    }

    private static Draft start(Yard yard, AreaBound bound, WorkMeter meter) {
        Filling filling = new Filling(yard);
        Draft best = filling.build(Filling.Order.AREA, Filling.BEST_TRIAL);
        meter.spend(Weights.of(yard.takeOperations()));
        for (Filling.Order order : Filling.Order.values()) {
            if (order != Filling.Order.AREA && !meter.isExhausted()) {
                best = better(best, filling.build(order, Filling.BEST_TRIAL));
                meter.spend(Weights.of(yard.takeOperations()));
            }
        }
        int stocks = Math.min(yard.model.stocks, MOST_STOCK_STARTS);
        for (int s : bound.cheapestFirst().subList(0, stocks)) {
            best = alone(yard, filling, s, best, meter);
        }
        if (!yard.model.paysOffcuts) {
            filling.moveToCheaper(best);
        }
        meter.spend(Weights.of(yard.takeOperations()));
        return best;
    }

    private static Draft alone(Yard yard, Filling filling, int stock, Draft known, WorkMeter meter) {
        Draft best = known;
        if (meter.isExhausted()) {
            return best;
        }
        Draft shelves = ShelfStart.on(yard, stock);
        if (shelves != null) {
            best = better(best, shelves);
        }
        for (Filling.Order order : List.of(Filling.Order.LONG_SIDE, Filling.Order.WIDTH)) {
            if (yard.model.stocks > 1 && meter.spend(Weights.of(yard.takeOperations()))) {
                best = better(best, filling.build(order, stock));
            }
        }
        return best;
    }

    private static Draft better(Draft best, Draft other) {
        return other.isBetterThan(best) ? other : best;
    }

    /** True if every piece that is missing fits no stock at all, zones and limits left aside. */
    private static boolean isAllPlaceable(Draft draft, Model model) {
        for (int t = 0; t < model.types; t++) {
            if (draft.left[t] > 0 && model.hasPlace(t)) {
                return false;
            }
        }
        return true;
    }

    /** Only where nothing that could be placed is missing: with less placed, another choice of pieces might cost less. */
    private static long searchedBound(Draft best, AreaBound bound) {
        return isAllPlaceable(best, best.yard.model) ? bound.of(placed(best)) : Answer.NO_BOUND;
    }

    private static int[] placed(Draft draft) {
        int[] placed = new int[draft.left.length];
        for (int t = 0; t < placed.length; t++) {
            placed[t] = draft.yard.model.item(t).demand() - draft.left[t];
        }
        return placed;
    }

    private static Answer answer(Model model, Draft draft, AreaBound bound, boolean proved, long searchedBound) {
        return new Answer(
                new RegionWriter(model).uses(draft),
                Arrays.stream(draft.left).boxed().toList(),
                bound.duals(placed(draft)),
                proved,
                searchedBound);
    }
}
