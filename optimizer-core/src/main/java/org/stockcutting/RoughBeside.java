package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Difference;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;

/**
 * What everything of a fixed size together leaves to boards of random size. It is estimated once and stands beside a comparison, the same for every
 * choice, so that an estimate is never weighed against a plan: a choice takes part if it leaves just that. One that leaves more leaves parts out.
 *
 * @param estimates what to buy of boards of random size, by stock id
 */
record RoughBeside(List<Estimate> estimates) {

    static final RoughBeside NONE = new RoughBeside(List.of());

    /**
     * @param job a job in canonical order
     * @param all the plan of everything together
     * @throws PlanRejectedException if the checker refuses the estimates: a fault of this library
     */
    static RoughBeside of(Job job, CuttingPlan all) {
        CuttingPlan added = new RandomWood(job, all).added();
        List<Violation> violations = added == all ? List.of() : PlanChecker.check(job, added);
        if (!violations.isEmpty()) {
            throw new PlanRejectedException(violations);
        }
        return new RoughBeside(added.derived().estimates());
    }

    /** Pieces of each of these parts that are left to them. */
    private SortedMap<String, Integer> left(List<String> parts) {
        SortedMap<String, Integer> left = new TreeMap<>();
        for (Estimate estimate : estimates) {
            for (Estimate.Served served : estimate.parts()) {
                if (parts.contains(served.part())) {
                    left.merge(served.part(), served.quantity(), Integer::sum);
                }
            }
        }
        return left;
    }

    /** True if all of these parts are left to them, whatever of a fixed size is bought. */
    boolean serves(List<String> parts) {
        return left(parts).size() == parts.size();
    }

    /** The choice without what is estimated beside it; as it was if it makes any of that itself. */
    Choice of(Choice told, List<String> parts) {
        SortedMap<String, Integer> left = left(parts);
        List<Unplaced> open = new ArrayList<>();
        for (Unplaced line : told.unplaced()) {
            Integer quantity = left.get(line.part());
            if (quantity == null || quantity != line.quantity()) {
                open.add(line);
            }
        }
        if (left.isEmpty() || open.size() + left.size() > told.unplaced().size()) {
            return told;
        }
        Status status = open.isEmpty() ? Status.FEASIBLE : RandomWood.status(open, told.boards() == 0);
        return told.withUnplaced(status, open);
    }

    /** What the wider choice saves; nothing is said of choices that leave different pieces to rough boards. */
    Difference difference(Choice narrower, Choice wider, List<String> parts) {
        Choice one = of(narrower, parts);
        Choice other = of(wider, parts);
        boolean alike = left(parts).isEmpty() || (one != narrower && other != wider);
        return alike ? Difference.of(one, other) : Difference.of(narrower, wider);
    }
}
