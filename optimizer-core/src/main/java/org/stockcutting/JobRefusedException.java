package org.stockcutting;

import java.util.List;
import org.stockcutting.job.Fault;

/** A job that cannot be planned as it stands, with every fault found. */
public final class JobRefusedException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;

    public JobRefusedException(List<Fault> faults) {
        super(faults.size() + " fault(s), the first: " + faults.get(0).text());
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }
}
