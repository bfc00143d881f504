package org.stockcutting.job;

import org.stockcutting.length.Length;

/**
 * How much bigger than finished the wood must be. All values are at least 0; those a kind of making does not use are 0.
 *
 * @param length added to the length
 * @param width added to the width (of the panel for a glue-up)
 * @param thickness added to the thickness (of the panel for a glue-up)
 * @param perStave added to the jointed width of each stave
 * @param staveThickness added to the panel blank's thickness for its staves
 * @param perPly added to the thickness of each ply
 */
public record AllowanceProfile(
        Length length, Length width, Length thickness, Length perStave, Length staveThickness, Length perPly) {

    /** Name of the profile that glue-ups use. */
    public static final String GLUE_UP = "glue-up";
    /** Name of the profile that laminations use. */
    public static final String LAMINATION = "lamination";
    /** Name of the general milling profile. */
    public static final String MILLED = "milled";
}
