package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/**
 * Boards that are cut alike, with their numbers.
 *
 * @param layout how they are cut
 * @param first number of the first among the boards of that stock, counted from 1
 */
public record BoardGroup(Layout layout, int first) {

    /** All boards of a plan, in its order. */
    public static List<BoardGroup> of(CuttingPlan plan) {
        Map<String, Integer> next = new HashMap<>();
        List<BoardGroup> groups = new ArrayList<>();
        for (Layout layout : plan.layouts()) {
            int first = next.getOrDefault(layout.stock(), 1);
            next.put(layout.stock(), first + layout.repeat());
            groups.add(new BoardGroup(layout, first));
        }
        return groups;
    }

    /** Number of the last board. */
    public int last() {
        return first + layout.repeat() - 1;
    }

    /** {@code 2x4-8 #3}, or {@code 2x4-8 #3 to #5}. */
    public String title() {
        return layout.stock() + " #" + first + (layout.repeat() == 1 ? "" : " to #" + last());
    }
}
