package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.stockcutting.material.WoodClass;

/**
 * Fills one clear stretch after the other as full as it can be (minimum bin slack: Gupta, Ho, Production Planning and Control 10, 1999).
 * Only where all pieces are of one class and a stretch gives one piece.
 */
final class Filling {

    /** Steps of search in one stretch. */
    private static final int STEPS = 3_000;

    private final List<Slice> slices;
    private final long kerf;
    private final int[] byLength;
    private final int[] left;
    private final int[] chosen;
    private final int[] best;
    private long bestFill;
    private int steps;
    private int kind;

    Filling(List<Slice> slices, long kerf) {
        this.slices = slices;
        this.kerf = kerf;
        this.byLength = Orders.byLength(slices);
        this.left = new int[slices.size()];
        this.chosen = new int[slices.size()];
        this.best = new int[slices.size()];
    }

    private record Room(int kind, long length) {}

    /** True if everything finds a place. */
    boolean placesAll(List<Line> boards, WoodClass woodClass, boolean shortFirst) {
        Arrays.setAll(left, s -> slices.get(s).demand());
        for (Room room : rooms(boards, woodClass, shortFirst)) {
            kind = room.kind();
            bestFill = -1;
            steps = 0;
            Arrays.fill(chosen, 0);
            Arrays.fill(best, 0);
            fill(0, room.length() + kerf, 0);
            for (int s = 0; s < left.length; s++) {
                left[s] -= best[s];
            }
        }
        return Arrays.stream(left).allMatch(count -> count == 0);
    }

    /** Stretches; behind a zone narrower than the kerf the next stretch begins a kerf after the last one's end. */
    private List<Room> rooms(List<Line> boards, WoodClass woodClass, boolean shortFirst) {
        List<Room> rooms = new ArrayList<>();
        for (Line board : boards) {
            long reached = Long.MIN_VALUE / 2;
            for (Line.Span span : board.clear(woodClass)) {
                long from = Math.max(span.from(), reached + kerf);
                if (span.to() > from) {
                    rooms.add(new Room(board.kind(), span.to() - from));
                    reached = span.to();
                }
            }
        }
        Comparator<Room> byLengths = Comparator.comparingLong(Room::length);
        rooms.sort(shortFirst ? byLengths : byLengths.reversed());
        return rooms;
    }

    private void fill(int index, long room, long filled) {
        if (filled > bestFill) {
            bestFill = filled;
            System.arraycopy(chosen, 0, best, 0, chosen.length);
        }
        if (index == byLength.length || room == 0 || ++steps > STEPS) {
            return;
        }
        int s = byLength[index];
        Slice slice = slices.get(s);
        long each = slice.length() + kerf;
        int most = slice.perSlice().get(kind) == 0 ? 0 : (int) Math.min(left[s], room / each);
        for (int count = most; count >= 0; count--) {
            chosen[s] = count;
            fill(index + 1, room - count * each, filled + count * each);
            if (bestFill >= filled + room) {
                break;
            }
        }
        chosen[s] = 0;
    }
}
