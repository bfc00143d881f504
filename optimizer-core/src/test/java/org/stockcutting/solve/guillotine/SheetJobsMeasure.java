package org.stockcutting.solve.guillotine;

import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** Prints what is found and proved on the shop's sheet jobs: types, pieces, steps. */
final class SheetJobsMeasure {

    private SheetJobsMeasure() {}

    public static void main(String[] args) {
        int types = Integer.parseInt(args[0]);
        int pieces = Integer.parseInt(args[1]);
        long steps = Long.parseLong(args[2]);
        long found = 0;
        long bounds = 0;
        int proved = 0;
        long begin = System.nanoTime();
        StringBuilder each = new StringBuilder();
        for (long seed = 0; seed < 10; seed++) {
            Instance instance = SheetJobs.typical(seed, types, pieces);
            long from = System.nanoTime();
            WorkMeter meter = new WorkMeter(steps, from + 600_000_000_000L, new CancelToken());
            Answer answer = new GuillotineEngine().solve(instance, meter, 1, Engine.EngineListener.NONE);
            if (!LayoutCheck.faults(instance, answer).isEmpty()) {
                throw new IllegalStateException("seed " + seed + LayoutCheck.faults(instance, answer));
            }
            long cost = LayoutCheck.cost(instance, answer) / 6400;
            long bound = answer.searchedBound() / 6400;
            found += cost;
            bounds += bound;
            proved += cost == bound ? 1 : 0;
            each.append(String.format(
                    " %d/%d(%d ms, %d k)", cost, bound, (System.nanoTime() - from) / 1_000_000, meter.used() / 1000));
        }
        System.out.printf(
                "%d types %d pieces %d steps: found %d, bound %d, proven %d, %d s%n%s%n",
                types, pieces, steps, found, bounds, proved, (System.nanoTime() - begin) / 1_000_000_000L, each);
    }
}
