package org.stockcutting.plan;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;

/**
 * News from a running search.
 *
 * @param stage what is being done, one word of the field
 * @param work weighted steps so far
 * @param value best value so far in atomic units of the goal, or null
 * @param bound best bound so far in atomic units, or null
 * @param best best checked plan so far, or null before the first
 */
public record Progress(
        String stage,
        long work,
        @Nullable BigInteger value,
        @Nullable BigInteger bound,
        @Nullable CuttingPlan best) {}
