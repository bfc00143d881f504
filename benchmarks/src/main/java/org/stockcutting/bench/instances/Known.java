package org.stockcutting.bench.instances;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;

/**
 * What the literature, or the rule an instance was made by, says about it; in atomic units of the goal.
 *
 * @param bound no plan under the job's rules can be below this, or null where nobody says
 * @param best the best value known, or null
 * @param reachable true if a plan under the job's rules has the best value; false where it was found under wider rules
 */
public record Known(@Nullable BigInteger bound, @Nullable BigInteger best, boolean reachable) {

    /** Nothing is known. */
    public static final Known NOTHING = new Known(null, null, false);

    /** The least value is known. */
    static Known optimum(BigInteger value) {
        return new Known(value, value, true);
    }

    /** What stays true of the same jobs under narrower rules: nothing gets cheaper, and the best value may be out of reach. */
    Known underNarrowerRules() {
        return new Known(bound, best, false);
    }

    /** The same, from a plain number. */
    static Known optimum(long value) {
        return optimum(BigInteger.valueOf(value));
    }
}
