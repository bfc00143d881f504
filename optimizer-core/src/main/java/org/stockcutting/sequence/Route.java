package org.stockcutting.sequence;

import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughPiece.Kind;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Shaping;

/**
 * What is left to be done to a rough piece of a part once it has left its board. Null says that there is nothing to do in that respect.
 *
 * @param rough the rough piece
 * @param planeOver thickness of the first planing, before the wood rests
 * @param planeTo thickness of the second planing
 * @param ripOff what is sawn off the width before the piece is glued, or to its finished width
 * @param panelPlaneTo thickness that a glued-up part is planed to
 */
record Route(
        RoughPiece rough,
        @Nullable Length planeOver,
        @Nullable Length planeTo,
        @Nullable Length ripOff,
        @Nullable Length panelPlaneTo) {

    /** A third of what milling takes off in thickness stays on over the rest, in steps that a rule shows. */
    private static final int SHARE_KEPT_OVER_REST = 3;

    private static final Length IMPERIAL_STEP = Length.ofNanometres(LengthUnit.INCH.nanometres() / 64);
    private static final Length METRIC_STEP = Length.millimetres("0.1");

    static Route of(RoughPiece rough, Job job) {
        if (!(rough.section() instanceof RoughSection.Sized sized)
                || !(rough.part().coreSection() instanceof Section.Measured finished)) {
            return new Route(rough, null, null, null, null);
        }
        Length thickness = finished.thickness();
        Length target = switch (rough.kind()) {
            case WHOLE -> thickness;
            case STAVE -> orElse(rough.trail().get(1).thickness(), thickness);
            case PLY -> share(thickness, rough.perPart());
        };
        Length planeTo = sized.thickness().isMoreThan(target) ? target : null;
        Length off = switch (rough.kind()) {
            case WHOLE -> sized.width().minus(BlankPlanner.straightWidth(job, rough.part(), finished));
            case STAVE -> sized.width().minus(orElse(rough.jointedWidth(), sized.width()));
            case PLY -> Length.ZERO;
        };
        boolean imperial = job.writing().unit().isImperial();
        return new Route(
                rough,
                planeTo == null ? null : over(sized.thickness(), planeTo, imperial),
                planeTo,
                off.isPositive() ? off : null,
                rough.kind() == Kind.STAVE && target.isMoreThan(thickness) ? thickness : null);
    }

    private static Length share(Length thickness, int plies) {
        return Length.ofNanometres(-Math.floorDiv(-thickness.nanometres(), (long) plies));
    }

    private static @Nullable Length over(Length rough, Length planeTo, boolean imperial) {
        long share = rough.minus(planeTo).nanometres() / SHARE_KEPT_OVER_REST;
        long step = (imperial ? IMPERIAL_STEP : METRIC_STEP).nanometres();
        long kept = share < step ? share : share - share % step;
        return kept == 0 ? null : planeTo.plus(Length.ofNanometres(kept));
    }

    private static Length orElse(@Nullable Length length, Length other) {
        return length == null ? other : length;
    }

    Part part() {
        return rough.part();
    }

    boolean isGlued() {
        return rough.kind() != Kind.WHOLE;
    }

    /** True if the rough piece is longer than what is made of it. */
    boolean hasLengthAllowance() {
        return rough.length().isMoreThan(part().coreLength());
    }

    /** True if the part is sawn to its finished length from the parts list. */
    boolean hasFinalCut() {
        return hasLengthAllowance() && part().shaping().fit() == Shaping.Fit.TO_SIZE;
    }

    /** True if the rough piece is wider than what is made of it. */
    boolean hasWidthAllowance() {
        return ripOff != null
                || (rough.kind() == Kind.PLY
                        && rough.section() instanceof RoughSection.Sized sized
                        && part().coreSection() instanceof Section.Measured finished
                        && sized.width().isMoreThan(finished.width()));
    }

    /** True if an edge and a face have to be straight before anything else is done. */
    boolean isJointed() {
        return planeTo != null || ripOff != null || rough.kind() == Kind.STAVE;
    }
}
