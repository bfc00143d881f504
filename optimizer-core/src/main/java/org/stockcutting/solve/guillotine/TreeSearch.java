package org.stockcutting.solve.guillotine;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Goal-driven ruin and recreate on guillotine trees with late acceptance.
 *
 * <p>After Gardeyn, Wauters, A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing problem with guillotine
 * constraints, European Journal of Operational Research 301 (2022); late acceptance after Burke, Bykov, EJOR 258 (2017). Once a plan is
 * known, the next must cost less: boards are taken out until it would, and the search tries to get all pieces on what may be bought.
 * Its energy is what is still missing. Where offcuts are paid for, cost falls in small steps, and the energy is cost plus a price for
 * what is missing.
 *
 * <p>Different here: pieces are interchangeable within their type; every board remembers where each type fits best, and boards that a
 * move leaves alone are shared; new boards are chosen by the cost of the area still needed.
 */
final class TreeSearch {

    private static final int HISTORY = 100;
    /** Of the purchases that are open so many are tried, those with most to spare. */
    private static final int MOST_AIMS = 6;
    /** Drafts that miss at most so many times what the round's best does are full of good boards. */
    private static final double NEAR = 1.5;

    private final Yard yard;
    private final Model model;
    private final AreaBound bound;
    private final Dice dice;
    private final Walk walk;
    private final double[] price;
    private final double[] weight;
    private @Nullable PurchaseRows purchases;
    private final BoardPool pool = new BoardPool();
    private final boolean pools;
    private Draft best;
    private long least;
    private long idle;
    private long aims;
    private long roundIdle;
    private double roundBest;
    private boolean started;

    /** Hears of better drafts. */
    interface Listener {
        void improved(Draft best);
    }

    TreeSearch(Yard yard, AreaBound bound, Draft start, long seed) {
        this.yard = yard;
        this.model = yard.model;
        this.bound = bound;
        this.dice = new Dice(seed);
        this.walk = new Walk(yard, dice);
        this.best = start;
        this.least = bound.of(placeable());
        this.price = prices();
        this.pools = !model.hasRepeats();
        this.weight = new double[model.types];
        for (int t = 0; t < model.types; t++) {
            weight[t] = model.item(t).weight();
        }
    }

    private int[] placeable() {
        int[] pieces = new int[model.types];
        for (int t = 0; t < model.types; t++) {
            pieces[t] = model.hasPlace(t) ? model.item(t).demand() : 0;
        }
        return pieces;
    }

    /** What a missing piece counts: more than any board would cost for it where offcuts are paid, else its area. */
    private double[] prices() {
        double dearest = 0;
        for (int s = 0; s < model.stocks; s++) {
            dearest = Math.max(dearest, model.stock(s).cost() / model.boardArea(s));
        }
        double[] prices = new double[model.types];
        for (int t = 0; t < model.types; t++) {
            prices[t] = model.paysOffcuts ? 3 * dearest * model.area(t) : model.area(t);
        }
        return prices;
    }

    Draft best() {
        return best;
    }

    /** Boards of good drafts, where no two pieces are alike. */
    BoardPool pool() {
        return pool;
    }

    /** Goes on from a draft that is better than the best so far. */
    void take(Draft better) {
        best = better;
        idle = 0;
        started = false;
    }

    /** Nothing that costs less than this is worth looking for. */
    void raise(long bound) {
        least = Math.max(least, bound);
    }

    /** What {@link #raise} and areas say. */
    long least() {
        return least;
    }

    /** Moves since the last gain. */
    long idle() {
        return idle;
    }

    /** Searches until the meter ends, nothing better came for this many moves, or the bound is met; then it can go on. */
    void run(WorkMeter meter, long patience, Listener listener) {
        // Each round starts again from the best; a round that leads nowhere ends early.
        long roundPatience = Math.max(400, patience / 6);
        if (!started) {
            restart();
            started = true;
        }
        while (idle < patience && !isProved()) {
            move(roundPatience, listener);
            if (!meter.spend(Weights.of(yard.takeOperations()))) {
                return;
            }
        }
    }

    private void move(long roundPatience, Listener listener) {
        Draft next = walk.move();
        if (pools && walk.current() == next && walk.reached() <= NEAR * roundBest) {
            pool.collect(next);
        }
        idle++;
        roundIdle++;
        if (next.isBetterThan(best)) {
            improve(next);
            listener.improved(best);
        } else if (walk.reached() < roundBest) {
            roundBest = walk.reached();
            roundIdle = 0;
        } else if (roundIdle > roundPatience) {
            restart();
        }
    }

    private void improve(Draft better) {
        best = better;
        idle = 0;
        if (model.paysOffcuts) {
            roundIdle = 0;
            roundBest = walk.reached();
        } else {
            restart();
        }
    }

    /** True if everything that any board can hold is placed. */
    boolean isComplete() {
        for (int t = 0; t < model.types; t++) {
            if (best.left[t] > 0 && model.hasPlace(t)) {
                return false;
            }
        }
        return true;
    }

    boolean isProved() {
        return isComplete() && best.cost() <= least;
    }

    /** Sets the next goal and takes out boards until the draft is within it. */
    private void restart() {
        Draft start = best.copy();
        Allowance cap = Allowance.of(model, Long.MAX_VALUE);
        if (!model.paysOffcuts && best.cost() > 0 && (isComplete() || dice.below(2) != 0)) {
            // A purchase that is not ruled out may still be too little: every second round takes whatever is cheaper.
            cap = aims % 2 == 0 ? Allowance.of(model, goal()) : aim(aims / 2);
            aims++;
            while (start.cost() > cap.cost()) {
                start.remove(costly(start));
            }
            for (int b = start.boards.size() - 1; b >= 0 && cap.isExceeded(start); b--) {
                if (cap.left(start, start.boards.get(b).stock) < 0) {
                    start.remove(b);
                }
            }
        }
        walk.start(start, cap, isComplete() || model.paysOffcuts ? price : weight, HISTORY);
        roundIdle = 0;
        roundBest = walk.reached();
    }

    /** Looks for plans of these purchases from now on. */
    void use(PurchaseRows known) {
        purchases = known;
    }

    /**
     * What a better plan may take: all that costs less, or one of the purchases that are not ruled out.
     *
     * @param turn which of them: they come one after the other, and again
     */
    Allowance aim(long turn) {
        List<int[]> open = purchases == null || !isComplete() ? List.of() : purchases.within(goal());
        if (purchases == null || open.isEmpty()) {
            return Allowance.of(model, goal());
        }
        int[] counts = open.get((int) (turn % Math.min(open.size(), MOST_AIMS)));
        return new Allowance(purchases.cost(counts), counts);
    }

    /** The most that a better plan may cost. */
    long goal() {
        return best.cost() - bound.costUnit();
    }

    /** What a missing piece of each type counts while the search goes for a cheaper plan. */
    double[] price() {
        return price;
    }

    /** A board to give up: of a few that cost something, the emptiest. */
    private int costly(Draft draft) {
        int chosen = -1;
        for (int n = 0; n < 3 || chosen < 0; n++) {
            int b = dice.below(draft.boards.size());
            Board board = draft.boards.get(b);
            if (board.cost > 0
                    && (chosen < 0 || board.density() < draft.boards.get(chosen).density())) {
                chosen = b;
            }
        }
        return chosen;
    }
}
