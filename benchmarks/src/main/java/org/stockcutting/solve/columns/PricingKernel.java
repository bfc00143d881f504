package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * The pricing table of column generation, filled once and read for every line. It stands in this package only to reach the table; it
 * belongs to the benchmarks.
 */
public final class PricingKernel {

    private final LineModel model;
    private final DenseKnapsack knapsack;
    private final List<Integer> all;
    private final double[] worth;
    private final int[] caps;
    private final double[] charges;

    /** A kernel whose worths are the sizes, bent a little so that no two items are equally good. */
    public PricingKernel(Instance instance) {
        model = new LineModel(instance);
        WorkMeter endless = new WorkMeter(Long.MAX_VALUE, System.nanoTime() + Long.MAX_VALUE / 2, new CancelToken());
        knapsack = new DenseKnapsack(model, new Work(endless));
        all = new ArrayList<>(IntStream.range(0, model.units.size()).boxed().toList());
        worth = new double[all.size()];
        caps = model.demands();
        charges = new double[model.lines.size()];
        for (int u : all) {
            worth[u] = model.units.get(u).size() * (1 + 0.01 * ((u * 7) % 11));
        }
    }

    /** Fills the table; the most worth that any line can hold. */
    public double run() {
        knapsack.fill(all, worth, caps, model.lines, charges);
        double most = 0;
        for (Line line : model.lines) {
            int state = knapsack.best(line, 1);
            most = state < 0 ? most : Math.max(most, knapsack.value(state));
        }
        return most;
    }
}
