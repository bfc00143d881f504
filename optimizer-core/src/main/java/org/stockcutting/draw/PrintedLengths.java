package org.stockcutting.draw;

import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Writing;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.length.LengthWriter.Rounding;

/**
 * Lengths as a maker reads them: in the job's unit, to the job's precision, with a mark on everything that was rounded. A part is never
 * printed smaller than it is and a leftover never larger, so that nobody cuts short by trusting the paper.
 */
public final class PrintedLengths {

    private final LengthWriter writer;
    private final @Nullable Length step;
    private final LengthUnit unit;

    public PrintedLengths(Writing writing) {
        writer = new LengthWriter(writing.unit(), writing.decimal());
        step = writing.precision();
        unit = writing.unit();
    }

    /** Size of a part or a board to be bought: rounded up. */
    public String part(Length length) {
        return print(length, Rounding.UP);
    }

    /** Size of what is left over: rounded down. */
    public String gap(Length length) {
        return print(length, Rounding.DOWN);
    }

    /** A tape reading: the nearest step. */
    public String position(Length length) {
        return print(length, Rounding.NEAREST);
    }

    /** Word for the unit that plain numbers are in. */
    public String unit() {
        return unit.symbol();
    }

    private String print(Length length, Rounding rounding) {
        return step == null ? writer.exact(length) : writer.rounded(length, step, rounding);
    }
}
