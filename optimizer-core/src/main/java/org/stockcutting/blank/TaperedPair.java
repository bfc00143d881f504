package org.stockcutting.blank;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Taper;

/**
 * Two tapered parts laid head to foot in one straight blank, so that the wood that one taper takes off is the foot of the other. Only one
 * taper of each can lie so: where two faces are tapered, the second is sawn afterwards; where all four are, nothing nests. Common practice,
 * no source.
 *
 * @param width width of the blank for both, the cut between them included, before any allowance, rounded up to a nanometre
 * @param saved how much narrower that is than two blanks and the cut between them
 */
public record TaperedPair(Length width, Length saved) {

    /** The pair that can be made of a part, or null where that saves nothing: the taper begins at half of the length, or below. */
    public static @Nullable TaperedPair of(Part part, Length kerf) {
        Taper taper = part.shaping().taper();
        Length start = part.shaping().taperStart(part.length());
        boolean whole = part.making() instanceof Making.AsCut || part.making() instanceof Making.Milled;
        if (taper == null
                || start == null
                || !whole
                || taper.faces() == Taper.Faces.FOUR
                || !(part.section() instanceof Section.Measured measured)) {
            return null;
        }
        Length width = width(part.length(), measured.width(), start, taper.foot(), kerf);
        Length saved = measured.width().plus(measured.width()).plus(kerf).minus(width);
        return saved.isPositive() ? new TaperedPair(width, saved) : null;
    }

    /**
     * Width of the blank: top and foot, and where the tapers begin below the ends, what the slope rises over that stretch.
     *
     * @param length length of the part
     * @param top its full width
     * @param start where the taper begins, less than the length
     * @param foot width at the far end
     * @param kerf the cut between the two
     */
    static Length width(Length length, Length top, Length start, Length foot, Length kerf) {
        BigInteger rise = BigInteger.valueOf(top.minus(foot).nanometres());
        BigInteger run = BigInteger.valueOf(length.minus(start).nanometres());
        BigInteger[] over =
                rise.multiply(BigInteger.valueOf(start.nanometres())).divideAndRemainder(run);
        long up = over[0].longValueExact() + (over[1].signum() == 0 ? 0 : 1);
        return top.plus(foot).plus(Length.ofNanometres(up)).plus(kerf);
    }
}
