package org.stockcutting.bench.peers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.StockType.ZoneRect;

/**
 * The clear stretches of a board, each a bin of its own. A zone that some item may not take splits the board for all of them, and
 * stretches are at least a kerf apart, so that pieces of different stretches never come too close. That may be stricter than the job where
 * parts of different classes meet on one board; the built-in jobs have one class only.
 */
record Segments(List<Segment> list, boolean exact) {

    Segments {
        list = List.copyOf(list);
    }

    /**
     * A stretch.
     *
     * @param start first usable position
     * @param capacity its length and one kerf, so that sizes (length and kerf) simply add up
     */
    record Segment(long start, long capacity) {}

    static Segments of(Instance instance, int stock) {
        StockType type = instance.stocks().get(stock);
        long kerf = instance.crosscutKerf();
        int strictest = Integer.MAX_VALUE;
        int mildest = Integer.MIN_VALUE;
        for (StockType.Placing place : type.places()) {
            if (place.somewhere()) {
                strictest = Math.min(strictest, place.woodClass());
                mildest = Math.max(mildest, place.woodClass());
            }
        }
        List<ZoneRect> zones = new ArrayList<>(type.zones());
        zones.sort(Comparator.comparingLong(ZoneRect::x0));
        List<Segment> segments = new ArrayList<>();
        boolean exact = zones.isEmpty() || strictest == mildest;
        long at = 0;
        for (ZoneRect zone : zones) {
            if (!zone.metal() && zone.severity() < strictest) {
                continue;
            }
            long margin = zone.metal() ? kerf : 0;
            long end = zone.x0() - margin;
            long next = Math.max(at, zone.x1() + margin);
            if (end > at) {
                segments.add(new Segment(at, end - at + kerf));
                exact &= next >= end + kerf;
                next = Math.max(next, end + kerf);
            }
            at = next;
        }
        if (at < type.length()) {
            segments.add(new Segment(at, type.length() - at + kerf));
        }
        return new Segments(segments, exact);
    }

    /** True if a model over these stretches leaves no plan of the instance out. */
    static boolean areExact(Instance instance) {
        if (!instance.limits().equals(Instance.Limits.NONE) || !instance.keep().isEmpty()) {
            return false;
        }
        for (int s = 0; s < instance.stocks().size(); s++) {
            if (!of(instance, s).exact()) {
                return false;
            }
        }
        return true;
    }
}
