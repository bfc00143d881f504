package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.columns.ColumnEngine;
import org.stockcutting.solve.guillotine.GuillotineEngine;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;
import org.stockcutting.solve.search.SearchEngine;
import org.stockcutting.solve.search.SearchTask;
import org.stockcutting.stock.StockItem;

/**
 * Which engine works on a component, in which order.
 *
 * <ol>
 *   <li>Boards that are only crosscut: column generation, its dive and its exact finish ({@link ColumnEngine}).
 *   <li>Everything else: guillotine patterns ({@link GuillotineEngine}).
 *   <li>Then, on boards that are only crosscut, the constraint solver at frozen value: groups, on-hand stock first, one long offcut,
 *       fewer patterns ({@link SearchEngine}).
 * </ol>
 */
final class EngineLadder {

    /** Share of a component's work that the search at frozen value may take. */
    private static final int SEARCH_SHARE = 4;

    private final Engine columns = new ColumnEngine();
    private final Engine guillotine = new GuillotineEngine();
    private final SearchEngine search = new SearchEngine();

    Answer climb(Reduced reduced, WorkMeter meter, long limit, long seed, Engine.EngineListener listener) {
        Instance instance = reduced.instance();
        boolean oneDimensional = instance.isOneDimensional();
        WorkMeter engineMeter = meter.part(limit - limit / SEARCH_SHARE);
        Answer answer = (oneDimensional ? columns : guillotine).solve(instance, engineMeter, seed, listener);
        meter.absorb(engineMeter);
        if (!oneDimensional || meter.isCutShort()) {
            return answer;
        }
        if (!answer.provedPlacement() && !instance.limits().equals(Instance.Limits.NONE)) {
            // Only crosscuts first were tried; a saw limit may leave no way but to rip first.
            WorkMeter secondMeter = meter.part(limit / SEARCH_SHARE);
            Answer second = guillotine.solve(instance, secondMeter, seed, (better, cost) -> {});
            meter.absorb(secondMeter);
            if (isBetter(instance, second, answer)) {
                return second;
            }
        }
        WorkMeter searchMeter = meter.part(limit / SEARCH_SHARE);
        List<Boolean> onHand = new ArrayList<>();
        for (StockItem stock : reduced.stock()) {
            onHand.add(stock instanceof StockItem.OnHand);
        }
        List<Answer.PatternUse> better =
                search.improve(new SearchTask(instance, answer.uses(), onHand), searchMeter, seed);
        meter.absorb(searchMeter);
        return new Answer(better, answer.unplaced(), answer.duals(), answer.provedPlacement(), answer.searchedBound());
    }

    /** More wood placed, or as much on cheaper boards where leftovers have no value. */
    private static boolean isBetter(Instance instance, Answer one, Answer other) {
        long more = missing(instance, other) - missing(instance, one);
        boolean plain = instance.stocks().stream().allMatch(stock -> stock.offcutValue() == 0);
        return more > 0 || (more == 0 && plain && cost(instance, one) < cost(instance, other));
    }

    private static long missing(Instance instance, Answer answer) {
        long weight = 0;
        for (int i = 0; i < instance.items().size(); i++) {
            weight += instance.items().get(i).weight() * answer.unplaced().get(i);
        }
        return weight;
    }

    private static long cost(Instance instance, Answer answer) {
        long cost = 0;
        for (Answer.PatternUse use : answer.uses()) {
            cost += use.copies() * instance.stocks().get(use.stock()).cost();
        }
        return cost;
    }
}
