package org.stockcutting.solve.guillotine;

import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * A rack of boards with bad zones where the shop leaves open which way a board is cut first. Whoever closes that in his job has fewer
 * patterns, so he should never get a cheaper plan. But patterns that mix both ways save 0.1 to 0.4 % of the wood, and a search ends 0.5 to
 * 1.5 % above the best, so that chance would decide. So the rack is searched as it would be with crosscuts first only, step by step the
 * same, then with both ways from the patterns of that search, then with rips first only, each with all the work that is allowed; the best
 * plan counts. Where only the clock limits, each has a third of the time.
 */
final class EitherWay {

    private final Instance instance;
    private final long seed;
    private final Engine.EngineListener listener;

    EitherWay(Instance instance, long seed, Engine.EngineListener listener) {
        this.instance = instance;
        this.seed = seed;
        this.listener = listener;
    }

    /** True for racks on which both ways are worth a try, but not for the few pieces that are searched through anyway. */
    static boolean suits(Yard yard) {
        return yard.choosesFirstCut() && RackSearch.suits(yard) && !SmallSearch.suits(yard.model);
    }

    /** @param free the search that may cut both ways */
    Answer run(Attempt free, WorkMeter meter) {
        long steps = meter.left();
        Attempt crosscuts = restricted(true, meter, steps, 3);
        WorkMeter half = meter.head(meter.isClockOnly() ? meter.left() / 2 : meter.left());
        Answer answer = free.run(half, crosscuts, listener);
        meter.absorb(half);
        if (free.isProved()) {
            return answer;
        }
        return free.answer(restricted(false, meter, steps, 1));
    }

    private Attempt restricted(boolean crosscuts, WorkMeter meter, long steps, int shares) {
        Attempt attempt = new Attempt(instance.cutFirst(crosscuts), seed);
        WorkMeter part = meter.beside(meter.isClockOnly() ? meter.left() / shares : steps);
        attempt.run(part, null, crosscuts ? listener : Engine.EngineListener.NONE);
        meter.absorbBeside(part);
        return attempt;
    }
}
