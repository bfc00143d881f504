package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.stockcutting.solve.instance.StockType;

/**
 * Places where a board with bad zones may be cut: its ends, for rips the edges of zones, those at which its latest
 * patterns were cut, and some by chance, a few pieces away from any of them or from the end of a zone. The places of good patterns are the
 * better ones to start from, and what two patterns were cut at can come together in a third.
 */
final class CutPlaces {

    /** Places of earlier patterns that are kept along each axis; beyond that those go that were not used for longest. */
    private static final int KEPT = 4;
    /** A place by chance is so many pieces away at most. */
    private static final int MOST_AWAY = 3;

    private final Dice dice;
    private final Set<Integer> keptX = new LinkedHashSet<>();
    private final Set<Integer> keptY = new LinkedHashSet<>();

    CutPlaces(Dice dice) {
        this.dice = dice;
    }

    /**
     * One axis of a board.
     *
     * @param alongX true for places of crosscuts, false for those of rips
     * @param end padded extent of the board
     * @param sizes padded sizes of pieces
     */
    record Of(boolean alongX, long end, long kerf, List<StockType.ZoneRect> zones, int[] sizes) {

        /** Where zones begin, each place with the cut before it, and end. */
        private Set<Integer> sides() {
            Set<Integer> sides = new TreeSet<>();
            for (StockType.ZoneRect zone : zones) {
                sides.add((int) ((alongX ? zone.x0() : zone.y0()) + kerf));
                sides.add((int) (alongX ? zone.x1() : zone.y1()));
            }
            return sides;
        }
    }

    /**
     * The places of one call, ascending, the board's ends among them.
     *
     * @param more so many by chance; 0 for none, and none of earlier patterns
     */
    int[] draw(Of axis, int more) {
        TreeSet<Integer> places = new TreeSet<>(List.of(0, (int) axis.end));
        Set<Integer> sides = axis.sides();
        if (!axis.alongX) {
            // Strips are crosscut at the ends of zones anyway.
            places.addAll(sides);
        }
        if (more > 0) {
            places.addAll(axis.alongX ? keptX : keptY);
            sides.addAll(places);
            byChance(axis, new ArrayList<>(sides), more, places);
        }
        return places.subSet(0, true, (int) axis.end, true).stream()
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private void byChance(Of axis, List<Integer> bases, int more, Set<Integer> places) {
        for (int n = 0; n < more; n++) {
            int place = bases.get(dice.below(bases.size()));
            int sign = dice.below(2) == 0 ? 1 : -1;
            for (int away = 1 + dice.below(MOST_AWAY); away > 0; away--) {
                place += sign * axis.sizes[dice.below(axis.sizes.length)];
            }
            places.add(place);
        }
    }

    /** Keeps the places that a pattern was cut at, but for the edges of zones across the board, which are always among them. */
    void keep(Of axis, List<Integer> cuts) {
        Set<Integer> kept = axis.alongX ? keptX : keptY;
        Set<Integer> sides = axis.alongX ? Set.of() : axis.sides();
        for (int place : cuts) {
            if (!sides.contains(place)) {
                kept.remove(place);
                kept.add(place);
            }
        }
        while (kept.size() > KEPT) {
            kept.remove(kept.iterator().next());
        }
    }
}
