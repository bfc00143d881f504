package org.stockcutting.sequence;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Machines;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.Direction;

/**
 * Usual cautions for a step. They are common practice of the trade: short work, narrow strips, thin or heavy stock and edges that are not
 * straight are what machine manuals warn of. None of them says that a step without a caution is safe.
 */
final class Cautions {

    private static final BigInteger CUBIC_INCH =
            BigInteger.valueOf(LengthUnit.INCH.nanometres()).pow(3);

    private final boolean imperial;

    private final Machines machines;
    private final LengthWriter writer;

    Cautions(Writing writing, Machines machines) {
        this.imperial = writing.unit().isImperial();
        this.machines = machines;
        this.writer = new LengthWriter(writing.unit(), writing.decimal());
    }

    /** What is said at the first cuts of a sheet, where they are made with a saw of their own. */
    String ofBreakdown(Machines.Breakdown saw, boolean trims) {
        String over = trims || saw.over().isZero()
                ? ""
                : " Leave " + writer.withUnit(saw.over()) + " on, and take it off at the fence before anything else.";
        return "Break the sheet down flat on the floor or on a grid, with the saw led along a straight edge." + over
                + " Follow the machine's manual.";
    }

    /** What is said where both ends are mitred. */
    String ofMitre(Length onSaw, boolean turned) {
        String how = turned
                ? "Turn the stick over: the cut before has made this one's first end."
                : "Mitre the first end, then the other at the stop, from long point to long point.";
        String hold = onSaw.isLessThan(Limits.SHORT_WORK)
                ? " Short work, under " + size("12 in", "305 mm") + ": hold it with a clamp or a jig, not by hand."
                : "";
        return how + hold + " Follow the machine's manual.";
    }

    /** What is said where two parts come from one blank: the cut that parts them makes both slopes. */
    String ofParting(Part part) {
        return "This cut parts two that lie head to foot and makes the slope of both: hold the blank in a tapering jig or on a sled, or saw"
                + " it at the band saw and plane to the line. Mark and bore both before." + straight(part)
                + " Follow the machine's manual.";
    }

    /** What is said of the second of the two. */
    String ofParted(Part part) {
        return "Its slope is made by the cut before." + straight(part) + " Follow the machine's manual.";
    }

    /** The slope runs on to the reference end, where the part is wider than it should be. */
    private String straight(Part part) {
        return part.coreSection() instanceof Section.Measured measured
                ? " Then rip it to " + writer.withUnit(measured.width())
                        + " from the reference end to where the taper begins, its face edge against the fence."
                : "";
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
        tooShort(cautions, length, "jointer", machines.jointer());
        tooWide(cautions, width, "jointer", machines.jointer(), "rip it first, or flatten it by hand or on a sled.");
        if (thickness.isLessThan(Limits.THIN_ON_JOINTER)) {
            cautions.add("Thin stock on the jointer: use a carrier board or a plane by hand.");
        }
        if (width != null && width.isLessThan(Limits.SHORT_AT_STOP)) {
            cautions.add("Under " + size("3 in", "76 mm") + " wide: use push blocks.");
        }
        return joined(cautions);
    }

    /** The cautions for planing a piece. */
    @Nullable String ofPlane(Length length, Length width) {
        List<String> cautions = new ArrayList<>();
        tooShort(cautions, length, "planer", machines.planer());
        tooWide(cautions, width, "planer", machines.planer(), "glue it up in parts that fit, or flatten it by hand.");
        return joined(cautions);
    }

    private void tooShort(List<String> cautions, Length length, String name, Machines.Machine machine) {
        Length shortest = machine.shortest();
        if (shortest == null && length.isLessThan(Limits.SHORT_WORK)) {
            cautions.add("Under " + size("12 in", "305 mm") + " is too short for most machines: the " + name
                    + " wants it carried between long runners, or worked by hand.");
        } else if (shortest != null && length.isLessThan(shortest)) {
            cautions.add("Shorter than the " + name + " takes (" + writer.withUnit(shortest)
                    + "): carry it between long runners, or work it by hand.");
        }
    }

    private void tooWide(
            List<String> cautions, @Nullable Length width, String name, Machines.Machine machine, String wayOut) {
        Length widest = machine.width();
        if (width != null && widest != null && width.isMoreThan(widest)) {
            cautions.add("Wider than the " + name + " takes (" + writer.withUnit(widest) + "): " + wayOut);
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
