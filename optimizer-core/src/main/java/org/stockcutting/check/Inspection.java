package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Violation;

/** Gathers what is found wrong; stops listing, not checking, where a plan is hopeless. */
final class Inspection {

    private static final int MOST = 1_000;

    private final List<Violation> violations = new ArrayList<>();

    void report(Cause cause, String pointer, String text) {
        if (violations.size() < MOST) {
            violations.add(new Violation(cause.word(), pointer, text));
        }
    }

    void require(boolean right, Cause cause, String pointer, String text) {
        if (!right) {
            report(cause, pointer, text);
        }
    }

    int size() {
        return violations.size();
    }

    List<Violation> violations() {
        return List.copyOf(violations);
    }

    /** A length as text for messages. */
    static String mm(long nanometres) {
        return Length.ofNanometres(nanometres).toString();
    }
}
