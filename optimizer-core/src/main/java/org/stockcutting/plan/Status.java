package org.stockcutting.plan;

/** How good the plan is known to be. */
public enum Status {
    /** All parts placed and the value equals the certified bound. */
    OPTIMAL("optimal"),
    /** All parts placed. */
    FEASIBLE("feasible"),
    /** Some parts are not placed, with reasons. */
    PARTIAL("partial"),
    /** Proved that not all parts can be placed; the rest is planned. */
    INFEASIBLE("infeasible"),
    /** Nothing could be placed. */
    NO_PLAN("no-plan");

    private final String word;

    Status(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
