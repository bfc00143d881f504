package org.stockcutting.part;

import org.jspecify.annotations.Nullable;

/**
 * Which wood a part may be made of, beyond its material and class.
 *
 * @param binding what the part's group asks for; says nothing where it has no group
 * @param showFaces how many of its faces are seen
 * @param cutFrom where the maker wants it cut from, or null
 */
public record Selection(
        Binding binding, ShowFaces showFaces, @Nullable CutFrom cutFrom) {

    /** Any wood that fits; a group shares one board, and both faces are seen. */
    public static final Selection NONE = new Selection(Binding.SAME_BOARD, ShowFaces.BOTH, null);

    /** The same wood, its group bound otherwise. */
    public Selection withBinding(Binding other) {
        return new Selection(other, showFaces, cutFrom);
    }

    /** The same wood, seen from so many sides. */
    public Selection withShowFaces(ShowFaces other) {
        return new Selection(binding, other, cutFrom);
    }

    /** The same wood from this place, or null for any. */
    public Selection withCutFrom(@Nullable CutFrom other) {
        return new Selection(binding, showFaces, other);
    }

    /** True if only the good face is seen. */
    public boolean goodFaceOnly() {
        return showFaces == ShowFaces.ONE;
    }
}
