package org.stockcutting.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.stock.Money;

/**
 * The answer to a job. Header to certificate are the core; {@code check} says what the independent checker found; {@code derived}
 * follows from the core.
 *
 * @param header where it comes from
 * @param cost money paid for stock, or null where something bought has no price
 * @param objective value and bound under the job's goal
 * @param layouts one entry for each different way of cutting a stock, by stock id then order of cutting
 * @param unplaced what got no wood, by part id
 * @param certificate proof of the bound
 * @param violations what the checker found; empty in every plan the optimizer returns
 * @param derived everything that follows
 */
public record CuttingPlan(
        PlanHeader header,
        @Nullable Money cost,
        Objective objective,
        List<Layout> layouts,
        List<Unplaced> unplaced,
        Certificate certificate,
        List<Violation> violations,
        Derived derived) {

    public CuttingPlan {
        layouts = List.copyOf(layouts);
        unplaced = List.copyOf(unplaced);
        violations = List.copyOf(violations);
    }

    /** The same plan under another header. */
    public CuttingPlan withHeader(PlanHeader other) {
        return new CuttingPlan(other, cost, objective, layouts, unplaced, certificate, violations, derived);
    }

    /** The same plan with other words for what has no wood. */
    public CuttingPlan withUnplaced(List<Unplaced> other) {
        return new CuttingPlan(header, cost, objective, layouts, other, certificate, violations, derived);
    }

    /** The same plan with something else that follows from it. */
    public CuttingPlan withDerived(Derived other) {
        return new CuttingPlan(header, cost, objective, layouts, unplaced, certificate, violations, other);
    }
}
