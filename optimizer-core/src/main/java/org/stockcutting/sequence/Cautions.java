package org.stockcutting.sequence;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.pattern.Direction;

/**
 * Usual cautions for a step. They are common practice of the trade: short work, narrow strips, thin or heavy stock and edges that are not
 * straight are what machine manuals warn of. None of them says that a step without a caution is safe.
 */
final class Cautions {

    private static final BigInteger CUBIC_INCH =
            BigInteger.valueOf(LengthUnit.INCH.nanometres()).pow(3);

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
     * @param thickness of the board
     * @param atStop true if the cut is made at a stop or fence
     * @param rawEdge true if the edge against the fence may be one that nothing has made straight
     * @param sheet true for sheets
     */
    @Nullable String ofCut(
            Direction cut, Block onSaw, Block freed, Length thickness, boolean atStop, boolean rawEdge, boolean sheet) {
        List<String> cautions = new ArrayList<>();
        boolean isShort = onSaw.length().isLessThan(Limits.SHORT_WORK);
        if (isShort) {
            cautions.add(
                    "Short work, under " + size("12 in", "305 mm") + ": hold it with a clamp or a jig, not by hand.");
        }
        if (sheet && isHeavy(onSaw, thickness)) {
            cautions.add("Heavy sheet: break it down on the floor with a guided saw, or have a helper.");
        }
        if (cut == Direction.RIP) {
            rip(cautions, onSaw, freed, thickness, atStop, rawEdge);
        } else if (atStop && freed.length().isLessThan(Limits.SHORT_AT_STOP)) {
            cautions.add("Part under " + size("3 in", "76 mm") + " at the stop: swing the stop away before the cut.");
        }
        return joined(cautions);
    }

    private void rip(
            List<String> cautions, Block onSaw, Block freed, Length thickness, boolean atStop, boolean rawEdge) {
        if (onSaw.length().isLessThan(onSaw.width())) {
            cautions.add("Shorter along the fence than wide: cut it with a sled or a mitre gauge instead.");
        }
        if (rawEdge && atStop) {
            cautions.add("Only a straight edge goes against the fence: joint it first, or use a sled.");
        }
        if (!atStop) {
            return;
        }
        if (freed.width().isLessThan(Limits.THIN_STRIP)) {
            cautions.add("Strip under " + size("3/4 in", "19 mm") + ": let it fall on the free side, or use a jig.");
        } else if (freed.width().isLessThan(Limits.NARROW_STRIP)) {
            cautions.add(
                    "Strip under " + size("1-1/2 in", "38 mm") + ": use a push stick or let it fall on the free side.");
        } else if (freed.width().isLessThan(Limits.PUSH_STICK)) {
            cautions.add("Under " + size("6 in", "152 mm") + " from the fence: use a push stick.");
        }
        if (!thickness.isMoreThan(Limits.THIN_STOCK)) {
            cautions.add("Thin stock slips under the fence: put an auxiliary fence on the table.");
        }
    }

    /** The cautions for jointing a piece. */
    @Nullable String ofJoint(Length length, @Nullable Length width, Length thickness) {
        List<String> cautions = new ArrayList<>();
        tooShort(cautions, length, "jointer");
        if (thickness.isLessThan(Limits.THIN_ON_JOINTER)) {
            cautions.add("Thin stock on the jointer: use a carrier board or a plane by hand.");
        }
        if (width != null && width.isLessThan(Limits.SHORT_AT_STOP)) {
            cautions.add("Under " + size("3 in", "76 mm") + " wide: use push blocks.");
        }
        return joined(cautions);
    }

    /** The cautions for planing a piece. */
    @Nullable String ofPlane(Length length) {
        List<String> cautions = new ArrayList<>();
        tooShort(cautions, length, "planer");
        return joined(cautions);
    }

    private void tooShort(List<String> cautions, Length length, String machine) {
        if (length.isLessThan(Limits.SHORT_WORK)) {
            cautions.add("Under " + size("12 in", "305 mm") + " is too short for most machines: the " + machine
                    + " wants it carried between long runners, or worked by hand.");
        }
    }

    private static boolean isHeavy(Block block, Length thickness) {
        BigInteger volume = BigInteger.valueOf(block.length().nanometres())
                .multiply(BigInteger.valueOf(block.width().nanometres()))
                .multiply(BigInteger.valueOf(thickness.nanometres()));
        return volume.compareTo(CUBIC_INCH.multiply(BigInteger.valueOf(Limits.HEAVY_SHEET_CUBIC_INCHES))) > 0;
    }

    private static @Nullable String joined(List<String> cautions) {
        return cautions.isEmpty() ? null : String.join(" ", cautions) + " Follow the machine's manual.";
    }

    private String size(String inches, String millimetres) {
        return imperial ? inches : millimetres;
    }
}
