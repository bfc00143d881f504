package org.stockcutting.job;

/** What comes first where the wood does not suffice for all sets. */
public enum Shortage {
    /** As much finished wood as can be placed, whatever it belongs to. */
    MOST_WOOD("most-wood"),
    /** As many sets as can be made whole, then what the wood left over gives; nothing is bought for a set that stays incomplete. */
    WHOLE_SETS("whole-sets");

    private final String word;

    Shortage(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
