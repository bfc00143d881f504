package org.stockcutting.io;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Fault;
import org.stockcutting.plan.Worklog;

/**
 * What came of reading a worklog.
 *
 * @param worklog the worklog, or null where there are faults
 * @param faults every fault of text and shape; whether it fits its plan is asked when the rest is planned
 */
public record WorklogReading(@Nullable Worklog worklog, List<Fault> faults) {

    public WorklogReading {
        faults = List.copyOf(faults);
    }
}
