package org.stockcutting.plan;

/** Why the search ended. */
public enum StopReason {
    PROVED("proved"),
    WORK_LIMIT("work-limit"),
    TIME_LIMIT("time-limit"),
    CANCELLED("cancelled");

    private final String word;

    StopReason(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
