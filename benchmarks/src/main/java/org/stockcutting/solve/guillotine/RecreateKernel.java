package org.stockcutting.solve.guillotine;

import org.stockcutting.solve.instance.Instance;

/**
 * One move of the search on sheets: a sheet is taken out of a full draft and its pieces are placed anew. It stands in this package only to
 * reach the search's parts; it belongs to the benchmarks.
 */
public final class RecreateKernel {

    private final Yard yard;
    private final Filling filling;
    private final Draft full;
    private final Dice dice;

    /** A kernel that starts from the best-fit draft. */
    public RecreateKernel(Instance instance, long seed) {
        yard = new Yard(new Model(instance));
        filling = new Filling(yard);
        full = filling.build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.ANY);
        dice = new Dice(seed);
    }

    /** One move; the cost of what comes out. The draft stays as it is. */
    public long run() {
        Draft next = full.copy();
        next.remove(dice.below(next.boards.size()));
        filling.recreate(next, Allowance.of(yard.model, full.cost()), dice);
        yard.takeOperations();
        return next.cost();
    }
}
