package org.stockcutting.http.cli;

import java.util.List;
import org.stockcutting.job.Fault;

/** Input that a command cannot work with, with everything that is wrong about it. */
final class RefusedException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String source;
    private final transient List<Fault> faults;

    /**
     * @param source what was read, such as the file's name
     * @param faults at least one
     */
    RefusedException(String source, List<Fault> faults) {
        super(source + ": " + faults.size() + " fault(s)");
        this.source = source;
        this.faults = List.copyOf(faults);
    }

    String source() {
        return source;
    }

    List<Fault> faults() {
        return faults;
    }
}
