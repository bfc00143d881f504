package org.stockcutting.io;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.material.NominalSize;

/** Makes ids for stock that has none: section, then length, as a yard would call it. */
final class StockIds {

    private StockIds() {}

    /** {@code 2x4-8} for eight feet of a trade size, else sizes in the job's unit, such as {@code 3/4x5-1/2-96}. */
    static String of(@Nullable NominalSize nominal, Length length, Length width, Length thickness, Reading reading) {
        long foot = LengthUnit.FOOT.nanometres();
        boolean feet = reading.unit().isImperial() && length.nanometres() % foot == 0;
        String section = nominal == null ? text(thickness, reading) + "x" + text(width, reading) : nominal.name();
        String run = nominal != null && feet ? Long.toString(length.nanometres() / foot) : text(length, reading);
        return (section + "-" + run).replace(' ', '-');
    }

    private static String text(Length length, Reading reading) {
        return reading.writer()
                .exact(length)
                .replace("\"", "")
                .replace("' ", "-")
                .replace("'", "ft");
    }
}
