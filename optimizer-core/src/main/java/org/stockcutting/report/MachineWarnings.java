package org.stockcutting.report;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Machines;
import org.stockcutting.job.UsualGang;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Warning;

/** What jointer and planer do not take, and what stays together so that they do. */
final class MachineWarnings {

    /** A piece or panel is wider than jointer or planer take. */
    static final String TOO_WIDE = "wider-than-machine";

    /** Short parts stay together in one blank, so that the machines take it. */
    static final String GANGED = "ganged";

    /** A blank is shorter than jointer or planer take. */
    static final String TOO_SHORT = "shorter-than-machine";

    private final Lookup lookup;
    private final LengthWriter writer;
    private final List<Warning> found;
    private final Set<String> shortened = new HashSet<>();

    /**
     * @param found where warnings go
     */
    MachineWarnings(Lookup lookup, LengthWriter writer, List<Warning> found) {
        this.lookup = lookup;
        this.writer = writer;
        this.found = found;
    }

    void look(String pointer, Layout layout) {
        tooWide(pointer, layout);
        shortBlanks(pointer, layout);
    }

    /** What has to be flat is milled in pieces that the machines take, or by hand. */
    private void tooWide(String pointer, Layout layout) {
        Machines machines = lookup.job().shop().machines();
        TreeSet<String> wide = new TreeSet<>();
        for (PlacedPiece piece : layout.pieces()) {
            RoughPiece rough = lookup.rough(piece.part());
            if (!(rough.section() instanceof RoughSection.Sized sized) || !sized.planed()) {
                continue;
            }
            // Surfaced as it leaves the board; a panel once more when it is glued.
            compare(
                    wide,
                    piece.part(),
                    "jointer",
                    machines.jointer(),
                    piece.width(),
                    "rip it to narrower staves first");
            Length planed = piece.width();
            if (rough.kind() == RoughPiece.Kind.STAVE) {
                Length panel = rough.trail().get(rough.trail().size() - 2).width();
                planed = panel == null ? planed : panel.max(planed);
            }
            compare(wide, piece.part(), "planer", machines.planer(), planed, "glue it up in parts that fit");
        }
        if (!wide.isEmpty()) {
            add(TOO_WIDE, pointer, String.join(" ", wide));
        }
    }

    private void compare(
            TreeSet<String> wide, String part, String name, Machines.Machine machine, Length width, String wayOut) {
        Length widest = machine.width();
        if (widest != null && width.isMoreThan(widest)) {
            wide.add(part + " is milled " + writer.withUnit(width) + " wide, and the " + name + " takes "
                    + writer.withUnit(widest) + ": " + wayOut + ", or flatten it by hand.");
        }
    }

    /** Said once for each part. */
    private void shortBlanks(String pointer, Layout layout) {
        for (PlacedPiece piece : layout.pieces()) {
            Part part = lookup.rough(piece.part()).part();
            UsualGang usual = UsualGang.of(lookup.job(), part);
            if (usual == null || !shortened.add(part.id())) {
                continue;
            }
            String why = part.id() + " by itself is " + writer.withUnit(usual.alone()) + " long in the rough, and the "
                    + usual.machine() + " takes nothing under " + writer.withUnit(usual.shortest()) + ": ";
            if (part.gang() >= usual.fewest()) {
                add(
                        GANGED,
                        pointer,
                        why + part.gang()
                                + " stay in one blank until they are planed and ripped. Give it gang 1 to have"
                                + " each by itself.");
            } else {
                add(TOO_SHORT, pointer, why + wayOut(part, usual));
            }
        }
    }

    private String wayOut(Part part, UsualGang usual) {
        String otherwise = " or carry it between long runners.";
        if (usual.inTheWay() != null) {
            return "take " + usual.inTheWay() + " off and give it gang " + usual.fewest()
                    + " or more to keep so many in" + " one blank," + otherwise;
        }
        if (usual.parts() > 1) {
            return "give it gang " + usual.parts() + " to keep so many in one blank," + otherwise;
        }
        int more = part.quantity() % usual.fewest();
        int rest = part.quantity() - more * (usual.fewest() + 1);
        boolean splits = lookup.job().sets() == 1 && more > 0 && rest > 0;
        return splits
                ? "make two lines of it, " + rest + " with gang " + usual.fewest() + " and "
                        + more * (usual.fewest() + 1) + " with gang " + (usual.fewest() + 1) + "," + otherwise
                : "add copies until they come out in gangs of " + usual.fewest() + "," + otherwise;
    }

    private void add(String code, String pointer, String text) {
        found.add(new Warning(code, pointer, text));
    }
}
