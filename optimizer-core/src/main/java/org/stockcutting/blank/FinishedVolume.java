package org.stockcutting.blank;

import java.math.BigInteger;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Taper;

/**
 * Finished volume of a part without its edging. What a taper takes off counts as part, but where two lie head to foot in one blank: there
 * it is wood of the other, so it is left out.
 */
public final class FinishedVolume {

    private FinishedVolume() {}

    /** Volume of one copy of a part that has this section. */
    public static Volume of(Part part, Section.Measured section) {
        Ends ends = part.shaping().ends();
        // Two triangles as high as the part is wide are as much as one rectangle.
        Length along = ends == null ? part.coreLength() : part.coreLength().minus(ends.slope(section.width()));
        Volume whole = Volume.of(along, section.width(), section.thickness());
        Taper taper = part.shaping().taper();
        Length start = part.shaping().taperStart(part.coreLength());
        if (taper == null || !taper.nest() || start == null) {
            return whole;
        }
        BigInteger off = Volume.of(
                        part.coreLength().minus(start), section.width().minus(taper.foot()), section.thickness())
                .cubicNanometres();
        // Rounded down to a whole cubic nanometre.
        return new Volume(whole.cubicNanometres().shiftLeft(1).subtract(off).shiftRight(1));
    }
}
