package org.stockcutting.blank;

import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;

/**
 * How many staves a panel is glued from, and how wide each is once jointed. All staves of a panel are equally
 * wide; the planner may choose others.
 *
 * @param count number of staves
 * @param jointed jointed width of each; count times this is at least the panel's width
 */
public record StaveWidths(int count, Length jointed) {

    /** What a rule shows: jointed widths are rounded up to it where the widest stave allows. */
    private static final Length IMPERIAL_STEP = Length.ofNanometres(LengthUnit.INCH.nanometres() / 64);

    private static final Length METRIC_STEP = Length.millimetres("0.1");

    static StaveWidths of(Part part, Making.GlueUp glueUp, Length panelWidth, LengthUnit unit) {
        Length most = glueUp.maxStave();
        Integer asked = glueUp.count();
        int count = asked == null ? Math.toIntExact(ceiling(panelWidth.nanometres(), most.nanometres())) : asked;
        Length exact = ceilingShare(panelWidth, count);
        if (exact.isMoreThan(most) || glueUp.minStave().isMoreThan(most)) {
            throw new IllegalArgumentException("part " + part.id() + ": " + count + " staves of at most " + most
                    + " do not make a panel " + panelWidth + " wide: ask for more staves or wider ones");
        }
        Length step = step(unit);
        Length rounded = step.times(ceiling(exact.nanometres(), step.nanometres()));
        Length share = rounded.isMoreThan(most) ? exact : rounded;
        return new StaveWidths(count, share.max(glueUp.minStave()));
    }

    /** The smallest step that a rule in this unit shows. */
    public static Length step(LengthUnit unit) {
        return unit.isImperial() ? IMPERIAL_STEP : METRIC_STEP;
    }

    /** The least whole number of nanometres of which so many shares reach the whole. */
    static Length ceilingShare(Length whole, int shares) {
        return Length.ofNanometres(ceiling(whole.nanometres(), shares));
    }

    private static long ceiling(long dividend, long divisor) {
        return -Math.floorDiv(-dividend, divisor);
    }
}
