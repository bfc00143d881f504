package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
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
    /** The other part that lies head to foot in the same straight blank, until a taper parts them. */
    @Nullable Workpiece mate;
    /** True if it is the one whose number the blank goes by. */
    boolean first = true;
    /** True once both ends are mitred, where they are to be. */
    boolean mitred;
    /** How many parts it still holds. */
    int parts = 1;
    /** What is still to be marked, bored and tapered. */
    final List<Due> due;

    Workpiece(
            Milling milling,
            @Nullable String board,
            boolean panel,
            int number,
            long length,
            long width,
            long thickness) {
        this.milling = milling;
        this.board = board;
        this.panel = panel;
        this.length = length;
        this.width = width;
        this.roughWidth = width;
        this.thickness = thickness;
        this.due = milling.isGlued() && !panel
                ? List.of()
                : new ArrayList<>(Due.of(milling.rough().part(), number, milling.length()));
    }

    /** Length that it has once this plan's work is done: what is fitted after assembly keeps its allowance. */
    long finalLength() {
        return Due.isFitted(milling.rough().part()) ? milling.rough().length() : milling.length();
    }

    /** True once nothing is left to be planed. */
    boolean isFlat() {
        return planed || !(panel ? milling.panelIsPlaned() : milling.isPlaned());
    }

    /** Width that the next rip has to leave. */
    long widthToReach() {
        if (panel || (milling.rough().isPair() && mate == null)) {
            return milling.width();
        }
        return milling.rippedWidth(roughWidth);
    }

    /** True for a stave or ply that can be glued now. */
    boolean canBeGlued() {
        return isFlat() && width == widthToReach();
    }

    /** Puts another part into the blank, head to foot. */
    void joinedBy(Workpiece other) {
        mate = other;
        other.mate = this;
        other.first = false;
    }

    /** The mate lies in the same wood: what is done to the blank is done to it. */
    void shareWood() {
        Workpiece other = mate;
        if (other != null) {
            other.length = length;
            other.width = width;
            other.thickness = thickness;
            other.jointed = jointed;
            other.planed = planed;
            other.planedOverAt = planedOverAt;
        }
    }

    /** A taper has parted the two: each has its own width now. */
    void part() {
        Workpiece other = mate;
        if (other != null) {
            mate = null;
            other.mate = null;
            width = milling.width();
            other.width = milling.width();
        }
    }

    /** What comes off a gang, or stays of it: the same wood so far, this long, beginning with this number. */
    Workpiece parted(int number, long ownLength, int ownParts) {
        Workpiece piece = new Workpiece(milling, board, false, number, ownLength, roughWidth, thickness);
        piece.width = width;
        piece.jointed = jointed;
        piece.planed = planed;
        piece.planedOverAt = planedOverAt;
        piece.parts = ownParts;
        return piece;
    }

    /** True if nothing is left to be done. */
    boolean isDone() {
        boolean glued = !milling.isGlued() || panel;
        boolean square = milling.rough().part().shaping().ends() == null;
        return parts == 1
                && (square || mitred)
                && glued
                && isFlat()
                && length == finalLength()
                && width == widthToReach()
                && due.isEmpty();
    }
}
