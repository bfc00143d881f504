package org.stockcutting.io;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Fault;
import org.stockcutting.plan.CuttingPlan;

/**
 * What came of reading a plan.
 *
 * @param plan the plan, or null where there are faults
 * @param faults every fault of text and shape; what the plan breaks is for the checker to say
 * @param defaults the job's defaults that the document carries, by their pointers
 */
public record PlanReading(@Nullable CuttingPlan plan, List<Fault> faults, SortedMap<String, String> defaults) {

    public PlanReading {
        faults = List.copyOf(faults);
        defaults = Collections.unmodifiableSortedMap(new TreeMap<>(defaults));
    }

    /** True if there is a plan. */
    public boolean isValid() {
        return plan != null;
    }

    /**
     * The plan.
     *
     * @throws IllegalArgumentException naming the first fault, where there is one
     */
    public CuttingPlan orThrow() {
        if (plan == null) {
            Fault first = faults.get(0);
            throw new IllegalArgumentException("the plan has " + faults.size() + " faults; the first, at "
                    + first.pointer() + ": " + first.text());
        }
        return plan;
    }
}
