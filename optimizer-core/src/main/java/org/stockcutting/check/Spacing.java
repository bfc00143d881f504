package org.stockcutting.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;

/**
 * Any two pieces on a board must be a crosscut kerf apart along x or a rip kerf apart along y: the cut that first parts them says so.
 * A sweep along x over rectangles that carry their kerf with them; the ones open at a time are disjoint across, so a sorted map holds
 * them (Shamos, Hoey 1976).
 */
final class Spacing {

    private static final int MOST = 100;

    private final long crosscutKerf;
    private final long ripKerf;
    private final Inspection inspection;
    private final String pointer;
    private int reported;

    private Spacing(Facts facts, Inspection inspection, String pointer) {
        this.crosscutKerf = facts.crosscutKerf();
        this.ripKerf = facts.ripKerf();
        this.inspection = inspection;
        this.pointer = pointer;
    }

    static void check(Facts facts, List<Rect> pieces, Inspection inspection, String pointer) {
        new Spacing(facts, inspection, pointer).sweep(pieces);
    }

    private void sweep(List<Rect> pieces) {
        List<Rect> byStart = new ArrayList<>(pieces);
        byStart.sort(Comparator.comparingLong(Rect::x0).thenComparingLong(Rect::y0));
        TreeMap<Long, Rect> open = new TreeMap<>();
        PriorityQueue<Rect> ends = new PriorityQueue<>(Comparator.comparingLong(Rect::x1));
        for (Rect piece : byStart) {
            while (!ends.isEmpty() && ends.element().x1() + crosscutKerf <= piece.x0()) {
                Rect done = ends.remove();
                open.remove(done.y0());
            }
            if (piece.isEmpty() || reported >= MOST) {
                continue;
            }
            if (isClear(piece, open)) {
                open.put(piece.y0(), piece);
                ends.add(piece);
            }
        }
    }

    private boolean isClear(Rect piece, TreeMap<Long, Rect> open) {
        boolean clear = true;
        Map.Entry<Long, Rect> below = open.lowerEntry(piece.y0());
        if (below != null && below.getValue().y1() + ripKerf > piece.y0()) {
            clear = conflict(piece, below.getValue());
        }
        for (Rect other :
                open.subMap(piece.y0(), true, piece.y1() + ripKerf, false).values()) {
            clear = conflict(piece, other);
        }
        return clear;
    }

    private boolean conflict(Rect piece, Rect other) {
        if (reported++ < MOST) {
            boolean shared = piece.overlaps(other);
            inspection.report(
                    shared ? Cause.OVERLAP : Cause.KERF,
                    pointer,
                    (shared ? "two pieces share wood: " : "two pieces are less than a saw cut apart: ") + other.text()
                            + " and " + piece.text());
        }
        return false;
    }
}
