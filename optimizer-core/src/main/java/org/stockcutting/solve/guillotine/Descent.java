package org.stockcutting.solve.guillotine;

import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.WorkMeter;

/** Looks for plans within a cost by fixing boards of a linear programme, dive after dive. */
interface Descent {

    /** Dives once; a draft without anything missing and with no more boards than these, or null. */
    @Nullable Draft run(WorkMeter meter, Allowance most);

    /** How often it has dived. */
    int dives();

    /** True if it found nothing and won't with more work. */
    default boolean isHopeless(Allowance most) {
        return false;
    }
}
