package org.stockcutting.stock;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;

/**
 * A bad stretch of a piece on hand, in raw coordinates: x from the raw start end, y from the edge where 0 is, before any trim.
 *
 * @param from start along the length
 * @param to end along the length, greater than {@code from}
 * @param fromEdge start across, or null for the whole width
 * @param toEdge end across, or null for the whole width
 * @param severity how bad it is
 * @param face which face shows it
 * @param metal true for a nail or screw: no cut may pass through it either
 */
public record Zone(
        Length from,
        Length to,
        @Nullable Length fromEdge,
        @Nullable Length toEdge,
        Severity severity,
        Face face,
        boolean metal) {

    /** Severities from least to worst. */
    public enum Severity {
        TIGHT_KNOT("tight-knot"),
        BLEMISH("blemish"),
        UNUSABLE("unusable");

        private final String word;

        Severity(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** The face on which a zone shows. */
    public enum Face {
        UP("up"),
        DOWN("down"),
        BOTH("both");

        private final String word;

        Face(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * True if a part of this class may contain the zone. Metal never may be inside a part. Boards lie with their good face up, so what
     * shows below is no matter to a part of which only that face is seen.
     */
    public boolean isAcceptableFor(WoodClass woodClass, boolean goodFaceOnly) {
        return (goodFaceOnly && face == Face.DOWN && !metal) || isAcceptableFor(woodClass);
    }

    /** The wood around it that clear parts keep away from, inside a board of this size; a nail is only the nail. */
    public Zone widened(Length margin, Length boardLength, Length boardWidth) {
        return new Zone(
                from.minus(margin).max(Length.ZERO),
                to.plus(margin).min(boardLength),
                fromEdge == null ? null : fromEdge.minus(margin).max(Length.ZERO),
                toEdge == null ? null : toEdge.plus(margin).min(boardWidth),
                Severity.TIGHT_KNOT,
                face,
                false);
    }

    /** True if a part of this class, seen from all sides, may contain the zone. */
    public boolean isAcceptableFor(WoodClass woodClass) {
        if (metal || severity == Severity.UNUSABLE || woodClass == WoodClass.CLEAR) {
            return false;
        }
        return severity == Severity.TIGHT_KNOT || woodClass == WoodClass.ANY;
    }
}
