package org.stockcutting.part;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * A part that gets smaller towards its far end, as table legs do.
 *
 * @param start where the taper begins, from the reference end; null is the usual place
 * @param foot size that is left at the far end, of each side that is tapered
 * @param faces which faces are tapered
 * @param nest true if two parts lie head to foot in one straight blank, which the first taper cut parts
 */
public record Taper(@Nullable Length start, Length foot, Faces faces, boolean nest) {

    /** A taper sawn from a straight blank of its own. */
    public Taper(@Nullable Length start, Length foot, Faces faces) {
        this(start, foot, faces, false);
    }

    /** The same taper, sawn out of a blank for two or of one of its own. */
    public Taper withNest(boolean other) {
        return new Taper(start, foot, faces, other);
    }

    /** Which faces are tapered. */
    public enum Faces {
        /** One face: the width gets smaller, the thickness stays. */
        ONE("one"),
        /** The two faces that look into the work: width and thickness get smaller, each from one side. */
        INSIDE_TWO("inside-two"),
        /** All four faces: width and thickness get smaller, each from both sides alike. */
        FOUR("four");

        private final String word;

        Faces(String word) {
            this.word = word;
        }

        /** The word used in documents. */
        public String word() {
            return word;
        }
    }
}
