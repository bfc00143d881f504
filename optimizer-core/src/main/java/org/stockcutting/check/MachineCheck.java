package org.stockcutting.check;

import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Machines;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Derived;

/** What jointer and planer do not take is warned about: too wide, too short, or kept in one blank because each by itself is too short. */
final class MachineCheck {

    private final Facts facts;
    private final Inspection inspection;
    private final Machines machines;
    private final Set<String> looked = new HashSet<>();

    MachineCheck(Facts facts, Inspection inspection) {
        this.facts = facts;
        this.inspection = inspection;
        this.machines = facts.job().shop().machines();
    }

    void check(Derived derived, LayoutCheck.Checked checked) {
        String at = "/layouts/" + checked.index();
        boolean wide = checked.layout().pieces().stream().anyMatch(this::isTooWide);
        boolean said = derived.warnings().stream()
                .anyMatch(w ->
                        w.code().equals("wider-than-machine") && w.pointer().equals(at));
        inspection.require(
                said || !wide, Cause.WARNING, at, "what is milled is wider than a machine takes, and nothing says so");
        checked.layout().pieces().forEach(piece -> shortBlank(derived, at, piece));
    }

    /** True if jointer or planer do not take what this piece is, or the panel it goes into. */
    private boolean isTooWide(PlacedPiece piece) {
        Rough rough = facts.roughs().get(piece.part());
        if (rough == null || !rough.planed()) {
            return false;
        }
        Length jointer = machines.jointer().width();
        Length planer = machines.planer().width();
        long wide = piece.width().nanometres();
        return (jointer != null && wide > jointer.nanometres())
                || (planer != null && Math.max(wide, rough.panelWidth()) > planer.nanometres());
    }

    /** Said once for each part. */
    private void shortBlank(Derived derived, String at, PlacedPiece piece) {
        Rough rough = facts.roughs().get(piece.part());
        if (rough == null
                || rough.asItComes()
                || rough.isPair()
                || rough.part().shaping().ends() != null
                || !(rough.part().making() instanceof Making.Milled)
                || !looked.add(piece.part())) {
            return;
        }
        Part part = rough.part();
        AllowanceProfile add = Rough.profile(facts.job(), ((Making.Milled) part.making()).profile());
        long alone = part.length().plus(add.length()).nanometres() - Rough.onEnds(part);
        boolean planed = add.thickness().isPositive();
        long wanted = Math.max(
                planed ? orZero(machines.planer().shortest()) : 0,
                planed || add.width().isPositive() ? orZero(machines.jointer().shortest()) : 0);
        if (alone >= wanted) {
            return;
        }
        String code = rough.length() < wanted ? "shorter-than-machine" : "ganged";
        inspection.require(
                derived.warnings().stream()
                        .anyMatch(w -> w.code().equals(code) && w.text().startsWith(part.id() + " by itself is ")),
                Cause.WARNING,
                at,
                part.id() + " by itself is too short for a machine: the warning " + code + " is due");
    }

    private static long orZero(@Nullable Length length) {
        return length == null ? 0 : length.nanometres();
    }
}
