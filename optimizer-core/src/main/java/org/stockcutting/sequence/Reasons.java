package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/** Why a step departs from what is usual: long before short, from the origin, to size only after planing, at a stop. */
final class Reasons {

    /** Said of a piece that is too long for the stop. */
    static final String MEASURED = "Longer than the stop reaches, so it is measured.";

    private final boolean imperial;

    Reasons(boolean imperial) {
        this.imperial = imperial;
    }

    /**
     * The reasons for one crosscut, or null.
     *
     * @param freed length of the piece that is cut off
     * @param longerStays true if a longer part stays in the stick
     * @param far true if the cut is made at the far end
     * @param toSize true if the piece gets its size before it is planed
     * @param measured true if the stop does not reach so far
     */
    @Nullable String of(Length freed, boolean longerStays, boolean far, boolean toSize, boolean measured) {
        List<String> reasons = new ArrayList<>();
        boolean isShort = freed.isLessThan(Limits.SHORT_WORK);
        if (longerStays && isShort) {
            reasons.add("Shorter than " + (imperial ? "12 in" : "305 mm")
                    + ", so it is cut before longer pieces, while the stick is still long.");
        } else if (longerStays) {
            reasons.add("Cut before a longer piece, because it lies nearer the end in this board's layout.");
        }
        if (far) {
            reasons.add("Cut at the far end, so that no short piece has to be sawn off a stub.");
        }
        if (toSize) {
            reasons.add("Cut to size before it is planed, because it has no allowance in this direction.");
        }
        if (measured) {
            reasons.add(MEASURED);
        }
        return reasons.isEmpty() ? null : String.join(" ", reasons);
    }
}
