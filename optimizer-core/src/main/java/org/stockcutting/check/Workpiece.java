package org.stockcutting.check;

import org.jspecify.annotations.Nullable;

/** A piece that has left its board, or a glued-up part, on its way to its finished size. */
final class Workpiece {

    final Milling milling;
    final @Nullable String board;
    final boolean panel;
    final long roughWidth;
    long length;
    long width;
    long thickness;
    boolean jointed;
    boolean planed;
    /** Rests there had been when it was planed over size, or -1. */
    int planedOverAt = -1;

    Workpiece(Milling milling, @Nullable String board, boolean panel, long length, long width, long thickness) {
        this.milling = milling;
        this.board = board;
        this.panel = panel;
        this.length = length;
        this.width = width;
        this.roughWidth = width;
        this.thickness = thickness;
    }

    /** True once nothing is left to be planed. */
    boolean isFlat() {
        return planed || !(panel ? milling.panelIsPlaned() : milling.isPlaned());
    }

    /** Width that the next rip has to leave. */
    long widthToReach() {
        if (panel) {
            return milling.width();
        }
        return milling.rippedWidth(roughWidth);
    }

    /** True for a stave or ply that can be glued now. */
    boolean canBeGlued() {
        return isFlat() && width == widthToReach();
    }

    /** True if nothing is left to be done. */
    boolean isDone() {
        boolean glued = !milling.isGlued() || panel;
        return glued && isFlat() && length == milling.length() && width == widthToReach();
    }
}
