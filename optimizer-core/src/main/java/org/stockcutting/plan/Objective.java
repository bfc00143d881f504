package org.stockcutting.plan;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;

/**
 * The value reached under the job's goal and what is proved about it, for the quantities that were placed.
 *
 * <p>All three are in atomic units of the goal: minor units of the currency, boards, or cubic nanometres.
 *
 * @param goal the goal
 * @param value what the plan reaches
 * @param bound no plan can be below this: certified in exact arithmetic
 * @param searchedBound closed by exact search without a certificate; null when not better than {@code bound}
 */
public record Objective(
        Goal goal,
        BigInteger value,
        BigInteger bound,
        @Nullable BigInteger searchedBound) {}
