package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;

/**
 * The best way to cut a board with bad zones at given places so that clear rests are left, whose worth a table knows. A part of the board
 * that still holds zones is crosscut at all their ends, or cut at a place into two such parts. What a part would be worth if it were clear
 * rules out most cuts unseen.
 */
final class RackCuts {

    /** Cells filled by one elementary operation. */
    private static final int FILLED = 8;

    private final ClearRests rests;
    private final int[] xs;
    private final int[] ys;
    private final int[][] zonesAlong;
    private final int[][] zonesAcross;
    private final int pairs;
    private final int[] known;
    private long operations;

    /**
     * @param zones those that matter, by their start
     * @param xs padded places of crosscuts, ascending, the ends included
     * @param ys the same of rips
     */
    RackCuts(Model model, ClearRests rests, List<StockType.ZoneRect> zones, int[] xs, int[] ys) {
        this.rests = rests;
        this.xs = xs;
        this.ys = ys;
        this.zonesAlong = zonesBetween(model, zones, xs, true);
        this.zonesAcross = zonesBetween(model, zones, ys, false);
        this.pairs = ys.length * (ys.length - 1) / 2;
        this.known = new int[xs.length * (xs.length - 1) / 2 * pairs];
        this.operations = known.length / FILLED;
        Arrays.fill(known, -1);
    }

    /** Which zones lie between two places, as bits. */
    private static int[][] zonesBetween(Model model, List<StockType.ZoneRect> zones, int[] places, boolean alongX) {
        int[][] between = new int[places.length][places.length];
        for (int z = 0; z < zones.size(); z++) {
            StockType.ZoneRect zone = zones.get(z);
            long from = alongX ? zone.x0() : zone.y0();
            long to = alongX ? zone.x1() : zone.y1();
            long kerf = alongX ? model.kerfX : model.kerfY;
            for (int i = 0; i < places.length; i++) {
                for (int j = i + 1; j < places.length; j++) {
                    between[i][j] |= places[i] < to && places[j] - kerf > from ? 1 << z : 0;
                }
            }
        }
        return between;
    }

    /**
     * The best way.
     *
     * @param first true if the board must be crosscut first, false if ripped, null if either will do
     */
    CutTree best(@Nullable Boolean first) {
        int j = xs.length - 1;
        int q = ys.length - 1;
        if (first == null) {
            return tree(0, j, 0, q);
        }
        return cut(0, j, 0, q, best(0, j, 0, q, first, !first), first, !first);
    }

    long operations() {
        return operations;
    }

    private boolean isClear(int i, int j, int p, int q) {
        return (zonesAlong[i][j] & zonesAcross[p][q]) == 0;
    }

    private int value(int i, int j, int p, int q) {
        if (isClear(i, j, p, q)) {
            return ifClear(i, j, p, q);
        }
        int at = (j * (j - 1) / 2 + i) * pairs + q * (q - 1) / 2 + p;
        if (known[at] < 0) {
            known[at] = best(i, j, p, q, true, true);
        }
        return known[at];
    }

    private int best(int i, int j, int p, int q, boolean crosscut, boolean rip) {
        int most = crosscut && !isClear(i, j, p, q) ? rests.uncut(xs[i], xs[j], ys[p], ys[q]) : 0;
        operations += j - i + q - p;
        for (int m = i + 1; m < j && crosscut; m++) {
            if (ifClear(i, m, p, q) + ifClear(m, j, p, q) > most) {
                most = Math.max(most, value(i, m, p, q) + value(m, j, p, q));
                operations++;
            }
        }
        for (int m = p + 1; m < q && rip; m++) {
            if (ifClear(i, j, p, m) + ifClear(i, j, m, q) > most) {
                most = Math.max(most, value(i, j, p, m) + value(i, j, m, q));
                operations++;
            }
        }
        return most;
    }

    /** What a part of the board would be worth without zones. */
    private int ifClear(int i, int j, int p, int q) {
        return rests.clear(xs[j] - xs[i], ys[q] - ys[p]);
    }

    private CutTree tree(int i, int j, int p, int q) {
        return isClear(i, j, p, q) ? CutTree.NO_CUT : cut(i, j, p, q, value(i, j, p, q), true, true);
    }

    private CutTree cut(int i, int j, int p, int q, int most, boolean crosscut, boolean rip) {
        if (crosscut && !isClear(i, j, p, q) && rests.uncut(xs[i], xs[j], ys[p], ys[q]) == most) {
            return CutTree.NO_CUT;
        }
        for (int m = i + 1; m < j && most > 0 && crosscut; m++) {
            if (value(i, m, p, q) + value(m, j, p, q) == most) {
                return CutTree.of(true, xs[m], tree(i, m, p, q), tree(m, j, p, q));
            }
        }
        for (int m = p + 1; m < q && most > 0 && rip; m++) {
            if (value(i, j, p, m) + value(i, j, m, q) == most) {
                return CutTree.of(false, ys[m], tree(i, j, p, m), tree(i, j, m, q));
            }
        }
        return CutTree.NO_CUT;
    }
}
