package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.stockcutting.solve.instance.StockType;

/**
 * Places where a board with bad zones may be cut: its ends, for rips the edges of zones, those at which good patterns were cut, and some
 * by chance, a few pieces away from any of them or from the end of a zone. The places of good patterns are the better ones to start from,
 * and what two patterns were cut at can come together in a third.
 */
final class CutPlaces {

    /** A place by chance is so many pieces away, one mostly. */
    private static final int[] AWAY = {1, 1, 1, 2, 2, 3};

    private CutPlaces() {}

    /**
     * One axis of a board.
     *
     * @param alongX true for places of crosscuts, false for those of rips
     * @param end padded extent of the board
     * @param sizes padded sizes of pieces
     */
    record Of(boolean alongX, long end, long kerf, List<StockType.ZoneRect> zones, int[] sizes) {

        /** What ends before a zone, or at the board's end. */
        private List<Integer> ends() {
            List<Integer> ends = new ArrayList<>(List.of((int) end));
            zones.forEach(zone -> ends.add((int) ((alongX ? zone.x0() : zone.y0()) + kerf)));
            return ends;
        }

        /** What starts behind a zone, or at the board's start. */
        private List<Integer> starts() {
            List<Integer> starts = new ArrayList<>(List.of(0));
            zones.forEach(zone -> starts.add((int) (alongX ? zone.x1() : zone.y1())));
            return starts;
        }
    }

    /**
     * The places of one call, ascending, the board's ends among them.
     *
     * @param good places of earlier patterns
     * @param more so many by chance
     */
    static int[] draw(Of axis, Set<Integer> good, int more, Dice dice) {
        List<Integer> ends = axis.ends();
        List<Integer> starts = axis.starts();
        TreeSet<Integer> places = new TreeSet<>(List.of(0, (int) axis.end));
        if (!axis.alongX) {
            // Strips are crosscut at the ends of zones anyway.
            places.addAll(ends);
            places.addAll(starts);
        }
        places.addAll(good);
        ends.addAll(good);
        starts.addAll(good);
        for (int n = 0; n < more; n++) {
            places.add(byChance(axis.sizes, starts, ends, dice));
        }
        return places.subSet(0, true, (int) axis.end, true).stream()
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private static int byChance(int[] sizes, List<Integer> starts, List<Integer> ends, Dice dice) {
        int chosen = dice.below(starts.size() + ends.size());
        boolean start = chosen < starts.size();
        int place = start ? starts.get(chosen) : ends.get(chosen - starts.size());
        int away = AWAY[dice.below(AWAY.length)];
        for (; away > 0; away--) {
            place += (start ? 1 : -1) * sizes[dice.below(sizes.length)];
        }
        return place;
    }
}
