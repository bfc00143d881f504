package org.stockcutting.part;

/**
 * Which wood a part may be made of, beyond its material and class.
 *
 * @param binding what the part's group asks for; says nothing where it has no group
 * @param showFaces how many of its faces are seen
 */
public record Selection(Binding binding, ShowFaces showFaces) {

    /** Any wood that fits; a group shares one board, and both faces are seen. */
    public static final Selection NONE = new Selection(Binding.SAME_BOARD, ShowFaces.BOTH);

    /** The same wood, its group bound otherwise. */
    public Selection withBinding(Binding other) {
        return new Selection(other, showFaces);
    }

    /** The same wood, seen from so many sides. */
    public Selection withShowFaces(ShowFaces other) {
        return new Selection(binding, other);
    }

    /** True if only the good face is seen. */
    public boolean goodFaceOnly() {
        return showFaces == ShowFaces.ONE;
    }
}
