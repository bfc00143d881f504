package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Boards being cut in a trial: what is still free, one piece placed after the other, exact positions. */
final class Bench {

    private final List<Slice> slices;
    private final List<Line> boards;
    private final long kerf;
    private final List<List<Line.Span>> free = new ArrayList<>();
    private final int[] wanted;

    Bench(List<Slice> slices, List<Line> boards, long kerf) {
        this.slices = slices;
        this.boards = boards;
        this.kerf = kerf;
        this.wanted = new int[slices.size()];
    }

    /** True if everything finds a place when kinds are taken in this order, each where the least is left over. */
    boolean placesAll(int[] order) {
        free.clear();
        boards.forEach(board -> free.add(new ArrayList<>(List.of(new Line.Span(board.from(), board.to())))));
        Arrays.setAll(wanted, s -> slices.get(s).demand());
        for (int s : order) {
            while (wanted[s] > 0) {
                if (!placeOne(s)) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean placeOne(int s) {
        Slice slice = slices.get(s);
        int board = -1;
        int interval = -1;
        long least = Long.MAX_VALUE;
        long at = 0;
        for (int b = 0; b < boards.size(); b++) {
            if (slice.perSlice().get(boards.get(b).kind()) == 0) {
                continue;
            }
            List<Line.Span> open = free.get(b);
            for (Line.Span clear : boards.get(b).clear(slice.woodClass())) {
                for (int i = 0; i < open.size(); i++) {
                    long from = Math.max(open.get(i).from(), clear.from());
                    long to = Math.min(open.get(i).to(), clear.to());
                    long rest = to - from - slice.length();
                    if (rest >= 0 && rest < least) {
                        least = rest;
                        board = b;
                        interval = i;
                        // Against whichever end is a sawn one already, so that the rest stays in one piece.
                        at = from == clear.from() || to != clear.to() ? from : to - slice.length();
                    }
                }
            }
        }
        if (board < 0) {
            return false;
        }
        take(free.get(board), interval, at, slice.length());
        wanted[s] -= slice.perSlice().get(boards.get(board).kind());
        return true;
    }

    private void take(List<Line.Span> open, int interval, long at, long length) {
        Line.Span span = open.remove(interval);
        if (span.to() > at + length + kerf) {
            open.add(interval, new Line.Span(at + length + kerf, span.to()));
        }
        if (at - kerf > span.from()) {
            open.add(interval, new Line.Span(span.from(), at - kerf));
        }
    }
}
