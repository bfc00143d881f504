package org.stockcutting.io;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Fault;
import org.stockcutting.plan.Comparison;

/**
 * What came of reading a comparison.
 *
 * @param comparison the comparison, or null where there are faults
 * @param faults every fault of text and shape
 */
public record ComparisonReading(@Nullable Comparison comparison, List<Fault> faults) {

    public ComparisonReading {
        faults = List.copyOf(faults);
    }

    /**
     * The comparison.
     *
     * @throws IllegalArgumentException naming the first fault, where there is one
     */
    public Comparison orThrow() {
        if (comparison == null) {
            Fault first = faults.get(0);
            throw new IllegalArgumentException("the comparison has " + faults.size() + " faults; the first, at "
                    + first.pointer() + ": " + first.text());
        }
        return comparison;
    }
}
