package org.stockcutting.part;

/**
 * Which wood a part may be made of, beyond its material and class.
 *
 * @param binding what the part's group asks for; says nothing where it has no group
 */
public record Selection(Binding binding) {

    /** Any wood that fits; a group shares one board. */
    public static final Selection NONE = new Selection(Binding.SAME_BOARD);

    /** The same wood, its group bound otherwise. */
    public Selection withBinding(Binding other) {
        return new Selection(other);
    }
}
