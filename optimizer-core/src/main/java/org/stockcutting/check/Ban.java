package org.stockcutting.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stockcutting.job.ShopRules;

/**
 * A rectangle of a board that some parts must not overlap: a bad zone with its margin, or wood that a taper lacks. Counted from the corner
 * of the usable rectangle; ends are exclusive.
 *
 * @param parts ids of the parts that keep clear of it
 */
record Ban(long x0, long y0, long x1, long y1, Set<String> parts) {

    /** Steps that stand for the slanting edge, all of them on the lacking side. */
    private static final int STEPS = 12;

    /** True if some part may find bans on a board. */
    static boolean concerns(Board board) {
        return !board.zones().isEmpty() || board.evenness().isTapered();
    }

    /** All bans of a board for these parts. */
    static List<Ban> of(Board board, List<Worth> worths, ShopRules shop) {
        List<Ban> bans = new ArrayList<>();
        for (Board.Bad bad : board.zones()) {
            Map<String, Rect> rects = new TreeMap<>();
            Map<String, Set<String>> parts = new TreeMap<>();
            for (Worth worth : worths) {
                Rect rect = PieceCheck.avoided(worth.rough(), bad, board, shop).intersect(board.usable());
                if (!rect.isEmpty()) {
                    rects.put(rect.toString(), rect);
                    parts.computeIfAbsent(rect.toString(), key -> new TreeSet<>())
                            .add(worth.rough().part().id());
                }
            }
            rects.forEach((key, rect) -> bans.add(from(rect, board, parts.getOrDefault(key, Set.of()))));
        }
        Set<String> all = new TreeSet<>();
        worths.forEach(worth -> all.add(worth.rough().part().id()));
        bans.addAll(lacking(board, all));
        return bans;
    }

    private static Ban from(Rect rect, Board board, Set<String> parts) {
        long x = board.usable().x0();
        long y = board.usable().y0();
        return new Ban(rect.x0() - x, rect.y0() - y, rect.x1() - x, rect.y1() - y, parts);
    }

    /** What ends behind a place along must end below the width that the taper leaves there. */
    private static List<Ban> lacking(Board board, Set<String> all) {
        Evenness evenness = board.evenness();
        Rect usable = board.usable();
        long farTrim = board.raw().y1() - usable.y1();
        List<Ban> bans = new ArrayList<>();
        for (int step = 0; step < STEPS && evenness.isTapered(); step++) {
            long x = usable.x0() + usable.length() / STEPS * step;
            long wood = evenness.widthUpTo(x) - farTrim;
            Rect rect = new Rect(x, wood, usable.x1(), usable.y1()).intersect(usable);
            if (!rect.isEmpty()) {
                bans.add(from(rect, board, all));
            }
        }
        return bans;
    }
}
