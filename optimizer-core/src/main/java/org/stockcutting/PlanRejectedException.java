package org.stockcutting;

import java.util.List;
import org.stockcutting.plan.Violation;

/** The independent checker refused a plan of our own making. It is not returned: this is a fault of the library, please report it. */
public final class PlanRejectedException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<Violation> violations;

    PlanRejectedException(List<Violation> violations) {
        super("the checker refused the plan, first: " + violations.get(0).cause() + " at "
                + violations.get(0).pointer() + ": " + violations.get(0).text());
        this.violations = List.copyOf(violations);
    }

    public List<Violation> violations() {
        return violations;
    }
}
