package org.stockcutting.solve.guillotine;

import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** Prints what is found and proved on the shop's sheet jobs in so many stages: types, pieces, steps, stages, first and last seed. */
final class StripMeasure {

    private StripMeasure() {}

    public static void main(String[] args) {
        int types = Integer.parseInt(args[0]);
        int pieces = Integer.parseInt(args[1]);
        long steps = Long.parseLong(args[2]);
        int stages = Integer.parseInt(args[3]);
        long found = 0;
        long bounds = 0;
        for (long seed = Integer.parseInt(args[4]); seed <= Integer.parseInt(args[5]); seed++) {
            Instance free = SheetJobs.typical(seed, types, pieces);
            Instance.Limits limits = new Instance.Limits(
                    Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, stages == 0 ? Integer.MAX_VALUE : stages, null, 0);
            Instance instance = new Instance(
                    free.items(),
                    free.stocks(),
                    free.crosscutKerf(),
                    free.ripKerf(),
                    limits,
                    free.keep(),
                    free.groups());
            long from = System.nanoTime();
            WorkMeter meter = new WorkMeter(steps, from + 3_600_000_000_000L, new CancelToken());
            Answer answer = new GuillotineEngine().solve(instance, meter, 1, Engine.EngineListener.NONE);
            if (!LayoutCheck.faults(instance, answer).isEmpty()) {
                throw new IllegalStateException("seed " + seed + LayoutCheck.faults(instance, answer));
            }
            long cost = LayoutCheck.cost(instance, answer) / 6400;
            long bound = answer.searchedBound() / 6400;
            found += cost;
            bounds += bound;
            System.out.printf(
                    "seed %d: %d/%d by area %.2f (%d ms, %d k)%n",
                    seed,
                    cost,
                    bound,
                    SheetJobs.sheetsByArea(instance),
                    (System.nanoTime() - from) / 1_000_000,
                    meter.used() / 1000);
        }
        System.out.printf(
                "%d types %d pieces %d steps %d stages: found %d, bound %d%n",
                types, pieces, steps, stages, found, bounds);
    }
}
