package org.stockcutting.http.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;

/** Turns faults into a problem: text that cannot be read at all is 400, a document that was read is 422. */
final class Refusals {

    private static final Set<String> UNREADABLE = Set.of(
            FaultCode.NOT_UTF_8.word(),
            FaultCode.NOT_JSON.word(),
            FaultCode.TOO_DEEP.word(),
            FaultCode.DUPLICATE_FIELD.word());

    private Refusals() {}

    static Problem of(List<Fault> faults) {
        for (Fault fault : faults) {
            if (UNREADABLE.contains(fault.code())) {
                return problem(ProblemKind.BAD_DOCUMENT, faults);
            }
        }
        return faulty(faults);
    }

    static Problem faulty(List<Fault> faults) {
        return problem(ProblemKind.FAULTY_INPUT, faults);
    }

    /** The same faults with their pointers below another one, for a document inside a document. */
    static List<Fault> below(String pointer, List<Fault> faults) {
        List<Fault> moved = new ArrayList<>();
        for (Fault fault : faults) {
            moved.add(new Fault(pointer + fault.pointer(), fault.code(), fault.got(), fault.expected(), fault.text()));
        }
        return moved;
    }

    /** True if the text could not be read as a document at all. */
    static boolean isUnreadable(List<Fault> faults) {
        return of(faults).kind() == ProblemKind.BAD_DOCUMENT;
    }

    private static Problem problem(ProblemKind kind, List<Fault> faults) {
        String first = faults.isEmpty() ? "" : " The first: " + faults.get(0).text();
        String detail = (faults.size() == 1 ? "1 fault." : faults.size() + " faults.") + first;
        return new Problem(kind, kind.status(), detail, faults, Map.of());
    }
}
