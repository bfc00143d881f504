package org.stockcutting.check;

import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;

/**
 * Most worth along one measured board: walks from the start end, piece after piece, each at the first clear place at least a kerf
 * behind the one before. Earlier is never worse, so first places are enough. Copies are not capped, which only raises the worth.
 */
final class ZoneWalk {

    private static final long MOST_PLACES = 1_000_000;
    private static final long MOST_STEPS = 100_000_000;

    private final Board board;
    private final long kerf;
    private final long[] lengths;
    private final long[] values;
    /** Start and end of every zone that stands in the way of a piece, by piece, from the usable start. */
    private final long[][] blockers;

    private ZoneWalk(Board board, List<Worth> worths, long kerf) {
        this.board = board;
        this.kerf = kerf;
        this.lengths = worths.stream().mapToLong(Worth::length).toArray();
        this.values = worths.stream().mapToLong(Worth::single).toArray();
        this.blockers = worths.stream().map(this::blockers).toArray(long[][]::new);
    }

    /** The most worth, or {@link Long#MAX_VALUE} where there are too many places to look at. */
    static long best(Board board, List<Worth> worths, long kerf) {
        return new ZoneWalk(board, worths, kerf).walk();
    }

    private long[] blockers(Worth worth) {
        long start = board.usable().x0();
        return board.zones().stream()
                .filter(bad -> blocks(worth, bad))
                .flatMapToLong(
                        bad -> LongStream.of(bad.rect().x0() - start, bad.rect().x1() - start))
                .toArray();
    }

    /** A zone that leaves enough width beside it does not block: the piece may lie there. */
    private boolean blocks(Worth worth, Board.Bad bad) {
        if (PieceCheck.takes(worth.rough(), bad)) {
            return false;
        }
        Rect usable = board.usable();
        long beside =
                Math.max(bad.rect().y0() - usable.y0(), usable.y1() - bad.rect().y1());
        return bad.rect().overlaps(usable) && beside < worth.leastWidth();
    }

    private long walk() {
        long size = board.usable().length();
        long step = step();
        if (size / step >= MOST_PLACES || size / step * lengths.length >= MOST_STEPS) {
            return Long.MAX_VALUE;
        }
        long[] reached = new long[(int) (size / step) + 1];
        Arrays.fill(reached, -1);
        reached[0] = 0;
        long best = -1;
        long whole = 0;
        for (int place = 0; place < reached.length; place++) {
            // A later place that is worth no more leads nowhere better.
            if (reached[place] <= best) {
                continue;
            }
            best = reached[place];
            for (int i = 0; i < lengths.length; i++) {
                long end = firstClear(i, place * step) + lengths[i];
                if (end <= size) {
                    long worth = best + values[i];
                    whole = Math.max(whole, worth);
                    int next = (int) Math.min(reached.length, (end + kerf) / step);
                    if (next < reached.length) {
                        reached[next] = Math.max(reached[next], worth);
                    }
                }
            }
        }
        return whole;
    }

    /** Places are multiples of this: pieces with their cut, and zone ends. */
    private long step() {
        long step = 0;
        for (int i = 0; i < lengths.length; i++) {
            step = gcd(step, lengths[i] + kerf);
            for (int z = 1; z < blockers[i].length; z += 2) {
                step = gcd(step, Math.max(0, blockers[i][z]));
            }
        }
        return Math.max(1, step);
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    private long firstClear(int piece, long from) {
        long[] zones = blockers[piece];
        long at = from;
        boolean moved = true;
        while (moved) {
            moved = false;
            for (int z = 0; z < zones.length; z += 2) {
                if (zones[z] < at + lengths[piece] && at < zones[z + 1]) {
                    at = zones[z + 1];
                    moved = true;
                }
            }
        }
        return at;
    }
}
