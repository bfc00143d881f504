package org.stockcutting.job;

import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;

/**
 * What jointer and planer take, and the saw that sheets are broken down with. None of it changes a plan's layouts: it is warned about, and
 * the cut sequence goes by it.
 *
 * @param jointer the jointer
 * @param planer the planer
 * @param breakdown the saw for the first cuts of sheets, or null where these are made like all others
 */
public record Machines(
        Machine jointer, Machine planer, @Nullable Breakdown breakdown) {

    /** Nothing known of them, and no saw of its own for first cuts. */
    public static final Machines UNKNOWN = new Machines(Machine.UNKNOWN, Machine.UNKNOWN, null);

    /**
     * What one machine takes.
     *
     * @param width widest piece, or null
     * @param shortest shortest piece, or null
     */
    public record Machine(@Nullable Length width, @Nullable Length shortest) {
        /** Nothing known of it. */
        public static final Machine UNKNOWN = new Machine(null, null);
    }

    /**
     * A saw that is led along a rail or a line, for the first cuts of sheets on the floor.
     *
     * @param kerf what it removes, at most what layouts leave
     * @param over how much is left on beside its cut, to be taken off at the fence; kerf and over together at most what layouts leave
     */
    public record Breakdown(Length kerf, Length over) {}
}
