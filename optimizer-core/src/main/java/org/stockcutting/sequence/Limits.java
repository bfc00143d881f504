package org.stockcutting.sequence;

import org.stockcutting.length.Length;

/** Sizes below which work at a machine asks for more than usual care, as saw manuals and trade articles give them. */
final class Limits {

    /** Common practice, printed in trade articles as the rule of twelve inches: think again about shorter work. */
    static final Length SHORT_WORK = Length.inches("12");

    static final Length PUSH_STICK = Length.inches("6");
    static final Length NARROW_STRIP = Length.inches("1.5");
    static final Length THIN_STRIP = Length.inches("0.75");
    static final Length SHORT_AT_STOP = Length.inches("3");
    static final Length THIN_STOCK = Length.inches("0.125");
    static final Length THIN_ON_JOINTER = Length.inches("0.375");

    /** About 50 lb of plywood at 600 kg a cubic metre (density from memory), in cubic inches. */
    static final long HEAVY_SHEET_CUBIC_INCHES = 2_300;

    private Limits() {}
}
