package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.stockcutting.solve.columns.ColumnEngine;
import org.stockcutting.solve.columns.LongLeftover;
import org.stockcutting.solve.columns.PatternSaver;
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
 *   <li>Then, on boards that are only crosscut, the constraint solver at frozen value: groups, on-hand stock first, one long offcut
 *       ({@link SearchEngine}).
 *   <li>One long leftover by bisection on the column bound ({@link LongLeftover}), if it gets long enough for the shop to keep it.
 *   <li>Last, on the same boards, fewer patterns ({@link PatternSaver}), with what the others have left over.
 * </ol>
 */
final class EngineLadder {

    /** The engine of boards that are only crosscut leaves this share of the work for what comes at frozen value. */
    private static final int FROZEN_SHARE = 4;
    /** Share that may go into filling the wood that unfinished panels leave behind. */
    private static final int WHOLE_SHARE = 6;
    /** Share that the constraint solver may take. */
    private static final int SEARCH_SHARE = 12;
    /** Share that the search for one long leftover may take. */
    private static final int STRETCH_SHARE = 12;
    /** Share that saving patterns may take, if so much is left. */
    private static final int SAVER_SHARE = 3;
    /** More is never of use for it. */
    private static final long SAVER_MOST = 2_000_000;

    private final Engine columns = new ColumnEngine();
    private final Engine guillotine = new GuillotineEngine();
    private final SearchEngine search = new SearchEngine();
    private final LongLeftover leftover = new LongLeftover();
    private final PatternSaver saver = new PatternSaver();

    /**
     * Solves a component.
     *
     * @param finished how many pieces of each item type an answer leaves once staves and plies of unfinished parts are taken off
     */
    Answer climb(
            Reduced reduced,
            Function<Answer, int[]> finished,
            WorkMeter meter,
            long limit,
            long seed,
            Engine.EngineListener listener) {
        Instance instance = reduced.instance();
        Answer answer = patterns(instance, reduced.hasStaves(), finished, meter, limit, seed, listener);
        listener.improved(answer, cost(instance, answer));
        return frozen(reduced, answer, meter, limit, seed);
    }

    /** The same value with less work at the saw and better leftovers, for boards that are only crosscut; with what the meter has left. */
    Answer frozen(Reduced reduced, Answer answer, WorkMeter meter, long limit, long seed) {
        WorkMeter rest = meter.part(meter.left());
        if (!reduced.instance().isOneDimensional() || !rest.spend(0)) {
            return answer;
        }
        Answer better = atFrozenValue(reduced, answer, rest, limit, seed);
        meter.absorb(rest);
        return better;
    }

    /**
     * The cheapest patterns, before anything is tried at frozen value. Where that follows, on boards that are only crosscut, a quarter of
     * the limit is left over for it; where panels may lack a stave, a share is left to fill their wood; else the engine has all.
     */
    Answer patterns(
            Instance instance,
            boolean staves,
            Function<Answer, int[]> finished,
            WorkMeter meter,
            long limit,
            long seed,
            Engine.EngineListener listener) {
        boolean oneDimensional = instance.isOneDimensional();
        long kept = oneDimensional ? limit / FROZEN_SHARE : staves ? limit / WHOLE_SHARE : 0;
        boolean clock = oneDimensional && meter.isClockOnly();
        WorkMeter engineMeter =
                clock ? meter.head(meter.left() / FROZEN_SHARE * (FROZEN_SHARE - 1)) : meter.part(limit - kept);
        Engine engine = oneDimensional ? columns : guillotine;
        Answer answer = engine.solve(instance, engineMeter, seed, listener);
        meter.absorb(engineMeter);
        WorkMeter wholeMeter = meter.part(limit / WHOLE_SHARE);
        answer = new WholePanels(instance, engine, finished).instead(answer, wholeMeter, seed);
        meter.absorb(wholeMeter);
        return answer;
    }

    private Answer atFrozenValue(Reduced reduced, Answer answer, WorkMeter meter, long limit, long seed) {
        Instance instance = reduced.instance();
        if (!answer.provedPlacement() && !instance.limits().equals(Instance.Limits.NONE)) {
            // Only crosscuts first were tried; a saw limit may leave no way but to rip first.
            WorkMeter secondMeter = meter.part(limit / FROZEN_SHARE);
            Answer second = guillotine.solve(instance, secondMeter, seed, (better, cost) -> {});
            meter.absorb(secondMeter);
            if (isBetter(instance, second, answer)) {
                return second;
            }
        }
        List<Boolean> onHand = new ArrayList<>();
        for (StockItem stock : reduced.stock()) {
            onHand.add(stock instanceof StockItem.OnHand);
        }
        WorkMeter searchMeter = meter.part(limit / SEARCH_SHARE);
        List<Answer.PatternUse> uses =
                search.improve(new SearchTask(instance, answer.uses(), onHand), searchMeter, seed);
        meter.absorb(searchMeter);
        WorkMeter stretchMeter = meter.part(limit / STRETCH_SHARE);
        LongLeftover.Result stretched = leftover.stretch(instance, uses, onHand, stretchMeter, seed);
        meter.absorb(stretchMeter);
        boolean worthKeeping = stretched.length() >= reduced.leastOffcut();
        uses = worthKeeping ? stretched.uses() : uses;
        WorkMeter saverMeter = meter.part(Math.min(limit / SAVER_SHARE, SAVER_MOST));
        uses = saver.improve(instance, uses, onHand, worthKeeping, saverMeter, seed);
        meter.absorb(saverMeter);
        return new Answer(uses, answer.unplaced(), answer.duals(), answer.provedPlacement(), answer.searchedBound());
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
