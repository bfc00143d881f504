package org.stockcutting.solve.guillotine;

import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * The engine for boards that are ripped and for sheets: a handful of pieces exactly; more by shelves, best fit, strips, then ruin and
 * recreate in turns with column generation, until the cost meets a bound, patience ends or the meter does.
 */
public final class GuillotineEngine implements Engine {

    @Override
    public Answer solve(Instance instance, WorkMeter meter, long seed, EngineListener listener) {
        Attempt attempt = new Attempt(instance, seed);
        return EitherWay.suits(attempt.yard)
                ? new EitherWay(instance, seed, listener).run(attempt, meter)
                : attempt.run(meter, null, listener);
    }
}
