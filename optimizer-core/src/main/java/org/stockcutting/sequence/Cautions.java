package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;

/**
 * Usual cautions for a cut. They are common practice of the trade: short work, narrow strips and pieces that are wider than long along
 * the fence are what saw manuals warn of. None of them says that a cut without a caution is safe.
 */
final class Cautions {

    private static final Length SHORT_WORK = Length.inches("12");
    private static final Length NARROW_STRIP = Length.inches("1.5");
    private static final Length SHORT_AT_STOP = Length.inches("3");

    private final boolean imperial;

    Cautions(boolean imperial) {
        this.imperial = imperial;
    }

    /**
     * The cautions for one cut, or null.
     *
     * @param cut direction
     * @param onSaw what lies on the saw
     * @param freed what the cut takes off
     * @param atStop true if the cut is made at a stop or fence
     */
    @Nullable String of(Direction cut, Block onSaw, Block freed, boolean atStop) {
        List<String> cautions = new ArrayList<>();
        if (onSaw.length().isLessThan(SHORT_WORK)) {
            cautions.add(
                    "Short work, under " + size("12 in", "305 mm") + ": hold it with a clamp or a jig, not by hand.");
        }
        if (cut == Direction.RIP && onSaw.length().isLessThan(onSaw.width())) {
            cautions.add("Shorter along the fence than wide: cut it with a sled or a mitre gauge instead.");
        }
        if (cut == Direction.RIP && atStop && freed.width().isLessThan(NARROW_STRIP)) {
            cautions.add(
                    "Strip under " + size("1-1/2 in", "38 mm") + ": use a push stick or let it fall on the free side.");
        }
        if (cut == Direction.CROSSCUT && atStop && freed.length().isLessThan(SHORT_AT_STOP)) {
            cautions.add("Part under " + size("3 in", "76 mm") + " at the stop: swing the stop away before the cut.");
        }
        return cautions.isEmpty() ? null : String.join(" ", cautions) + " Follow the machine's manual.";
    }

    private String size(String inches, String millimetres) {
        return imperial ? inches : millimetres;
    }
}
