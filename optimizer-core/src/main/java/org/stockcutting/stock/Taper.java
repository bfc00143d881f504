package org.stockcutting.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.stockcutting.length.Length;

/** The wood that a tapered board lacks, as bad zones: steps that cover everything beyond the slanting edge, and so a little more. */
public final class Taper {

    private static final int STEPS = 8;

    private Taper() {}

    /**
     * The steps, from the widest level down.
     *
     * @param farTrim what is removed along the slanting edge
     * @param levels distances from the edge at which nothing may be lost: what ends there may reach as far as the board does
     */
    public static List<Zone> steps(StockItem board, Length farTrim, Iterable<Length> levels) {
        Length widthEnd = board.condition().widthEnd();
        Length top = board.width().minus(farTrim);
        if (widthEnd == null || !widthEnd.isLessThan(board.width()) || !top.isPositive()) {
            return List.of();
        }
        Length bottom = widthEnd.minus(farTrim).max(Length.ZERO);
        TreeSet<Length> ends = new TreeSet<>();
        for (Length level : levels) {
            if (level.isMoreThan(bottom) && level.isLessThan(top)) {
                ends.add(level);
            }
        }
        if (ends.isEmpty()) {
            long rise = top.minus(bottom).nanometres() / STEPS;
            for (int i = 1; i < STEPS && rise > 0; i++) {
                ends.add(bottom.plus(Length.ofNanometres(rise * i)));
            }
        }
        ends.add(top);
        List<Zone> steps = new ArrayList<>();
        Length from = bottom;
        for (Length end : ends) {
            Length reach = board.condition().reach(end.plus(farTrim), board).max(Length.ZERO);
            if (reach.isLessThan(board.length())) {
                Length to = end.equals(top) ? board.width() : end;
                steps.add(new Zone(reach, board.length(), from, to, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false));
            }
            from = end;
        }
        return steps;
    }
}
