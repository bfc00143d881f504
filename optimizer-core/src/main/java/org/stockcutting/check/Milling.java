package org.stockcutting.check;

import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Job;
import org.stockcutting.part.Making;
import org.stockcutting.part.Section;

/**
 * The sizes that a rough piece must pass through, worked out from the job alone; -1 where there is no such size to reach.
 *
 * @param rough the rough piece
 * @param pieceThickness thickness that the piece is planed to before it is sawn to size or glued
 * @param thickness finished thickness
 * @param width finished width without the strips on its edges
 * @param length finished length without the strips on its ends
 * @param straightWidth width before anything is tapered: the finished one, but for two parts head to foot in one blank
 */
record Milling(Rough rough, long pieceThickness, long thickness, long width, long length, long straightWidth) {

    private static final long NONE = -1;

    static Milling of(Rough rough, Job job) {
        long length = rough.part().length().nanometres() - Rough.onEnds(rough.part());
        if (!(rough.part().section() instanceof Section.Measured finished)) {
            return new Milling(rough, NONE, NONE, NONE, length, NONE);
        }
        long thickness = finished.thickness().nanometres();
        long width = finished.width().nanometres() - Rough.onEdges(rough.part());
        long before = switch (rough.kind()) {
            case WHOLE -> thickness;
            case STAVE ->
                thickness
                        + Rough.profile(job, AllowanceProfile.GLUE_UP)
                                .thickness()
                                .nanometres();
            case PLY -> Rough.ceilDiv(thickness, rough.perPart());
        };
        long over = rough.part().making() instanceof Making.Milled milled
                ? Rough.profile(job, milled.profile()).width().nanometres()
                : 0;
        long straight = rough.isPair() ? rough.leastWidth() - over : width;
        return new Milling(rough, rough.thickness() > before ? before : NONE, thickness, width, length, straight);
    }

    boolean isPlaned() {
        return pieceThickness != NONE;
    }

    /** True where the wood has to lie between two planings: less than three nanometres cannot be taken off in two goes. */
    boolean rests() {
        return isPlaned() && rough.thickness() - pieceThickness >= 3;
    }

    boolean isGlued() {
        return rough.kind() != Rough.Kind.WHOLE;
    }

    /** Panels may be thicker than finished once they are glued; laminations are as thick as their plies. */
    boolean panelIsPlaned() {
        return rough.kind() == Rough.Kind.STAVE
                && rough.thickness() > thickness
                && (isPlaned() ? pieceThickness : rough.thickness()) > thickness;
    }

    /** Width of a piece once it is ripped, from what it was when it left its board. */
    long rippedWidth(long roughWidth) {
        return switch (rough.kind()) {
            case WHOLE -> rough.asItComes() ? roughWidth : straightWidth;
            case STAVE -> roughWidth - rough.perStave();
            case PLY -> roughWidth;
        };
    }

    /** True if the piece leaves its board longer, or where it lies turned wider, than it will be in the end. */
    boolean hasAllowance(boolean turned) {
        return turned
                ? !rough.asItComes() && (rough.leastWidth() > straightWidth || rough.perStave() > 0) && !jointsNothing()
                : rough.length() > length;
    }

    /** Staves have their allowance in what jointing takes off, not in the width of the panel. */
    private boolean jointsNothing() {
        return rough.kind() == Rough.Kind.STAVE && rough.perStave() == 0;
    }
}
