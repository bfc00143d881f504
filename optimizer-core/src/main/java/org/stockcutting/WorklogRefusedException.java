package org.stockcutting;

import java.util.List;
import org.stockcutting.job.Fault;

/** A worklog that cannot be followed, with every fault found; pointers are into the worklog's document. */
public final class WorklogRefusedException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;

    public WorklogRefusedException(List<Fault> faults) {
        super(faults.size() + " fault(s), the first: " + faults.get(0).text());
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }
}
