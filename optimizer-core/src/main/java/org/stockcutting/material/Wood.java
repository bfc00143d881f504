package org.stockcutting.material;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What a wood weighs and how it moves. Coefficients are the dimensional change coefficients of the Wood Handbook (FPL-GTR-190, chapter
 * 13): change of width for each per cent of moisture, as a share of the width, good from 6 to 14 % moisture.
 *
 * @param name name of the row
 * @param kind softwood, hardwood or a made sheet
 * @param density at 12 % moisture, or null where the table has none
 * @param tangential coefficient of flat-sawn boards, or null for sheets, which hardly move
 * @param radial coefficient of quarter-sawn boards, or null for sheets
 * @param densitySource where the density is from, empty where there is none
 * @param movementSource where the coefficients are from, empty where there are none
 */
public record Wood(
        String name,
        Kind kind,
        @Nullable Density density,
        @Nullable BigDecimal tangential,
        @Nullable BigDecimal radial,
        String densitySource,
        String movementSource) {

    /** What kind of stuff it is. */
    public enum Kind {
        SOFTWOOD,
        HARDWOOD,
        SHEET
    }
}
