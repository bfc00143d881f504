package org.stockcutting.solve.guillotine;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;

/**
 * The best way to cut a board with bad zones at given places so that clear rests are left, whose worth a table knows. A part of the board
 * that still holds zones is crosscut at all their ends, or cut at a place into two such parts. Parts between two places along are filled
 * together, shortest first, so that most of it is maxima of whole lines.
 */
final class RackCuts {

    /** Cells of one vector maximum that cost about as much as one elementary operation. */
    private static final int VECTOR = 2;
    /** Operations of one look-up in the table of clear rests, which seldom is where the last one was. */
    private static final int LOOK_UP = 4;

    private final ClearRests rests;
    private final int[] xs;
    private final int[] ys;
    private final int nx;
    private final int ny;
    /** Which zones lie between two places, as bits. */
    private final int[] zonesAlong;

    private final int[] zonesAcross;
    /** Worth of clear rests as wide as what lies between two places across. */
    private final int[][] lines;
    /** By the two places along: worth of every part between two places across. */
    private final int[][] worth;

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
        this.nx = xs.length;
        this.ny = ys.length;
        this.zonesAlong = zonesBetween(model, zones, xs, true);
        this.zonesAcross = zonesBetween(model, zones, ys, false);
        this.lines = new int[ny * ny][];
        for (int p = 0; p < ny; p++) {
            for (int q = p + 1; q < ny; q++) {
                lines[p * ny + q] = rests.line(ys[q] - ys[p]);
            }
        }
        this.worth = new int[nx * nx][];
        for (int span = 1; span < nx; span++) {
            for (int i = 0; i + span < nx; i++) {
                fill(i, i + span);
            }
        }
    }

    private static int[] zonesBetween(Model model, List<StockType.ZoneRect> zones, int[] places, boolean alongX) {
        int[] between = new int[places.length * places.length];
        for (int z = 0; z < zones.size(); z++) {
            StockType.ZoneRect zone = zones.get(z);
            long from = alongX ? zone.x0() : zone.y0();
            long to = alongX ? zone.x1() : zone.y1();
            long kerf = alongX ? model.kerfX : model.kerfY;
            for (int i = 0; i < places.length; i++) {
                for (int j = i + 1; j < places.length; j++) {
                    between[i * places.length + j] |= places[i] < to && places[j] - kerf > from ? 1 << z : 0;
                }
            }
        }
        return between;
    }

    private void fill(int i, int j) {
        int[] best = new int[ny * ny];
        for (int p = 0; p < ny; p++) {
            for (int q = p + 1; q < ny; q++) {
                best[p * ny + q] = uncut(i, j, p, q);
            }
        }
        for (int m = i + 1; m < j; m++) {
            raise(best, worth[i * nx + m], worth[m * nx + j]);
        }
        for (int p = ny - 3; p >= 0; p--) {
            for (int m = p + 1; m < ny - 1; m++) {
                raise(best, p * ny, m, ny);
            }
        }
        worth[i * nx + j] = best;
        int zones = Integer.bitCount(zonesAlong[i * nx + j]);
        operations += (long) ny * ny * (LOOK_UP * (2 + zones) + 2L * (j - i) + ny) / (2 * VECTOR);
    }

    /** Kept this plain so that the compiler turns it into vector instructions. */
    private static void raise(int[] best, int[] before, int[] behind) {
        for (int k = 0; k < best.length; k++) {
            best[k] = Math.max(best[k], before[k] + behind[k]);
        }
    }

    /** All parts that start at a place across, ripped at another one. */
    private static void raise(int[] best, int row, int m, int ny) {
        int before = best[row + m];
        for (int q = m + 1; q < ny; q++) {
            best[row + q] = Math.max(best[row + q], before + best[m * ny + q]);
        }
    }

    private int uncut(int i, int j, int p, int q) {
        int hit = zonesAlong[i * nx + j] & zonesAcross[p * ny + q];
        return rests.uncut(xs[i], xs[j], hit, lines[p * ny + q]);
    }

    /**
     * The best way.
     *
     * @param first true if the board must be crosscut first, false if ripped, null if either will do
     */
    CutTree best(@Nullable Boolean first) {
        if (first == null) {
            return tree(0, nx - 1, 0, ny - 1);
        }
        return cut(0, nx - 1, 0, ny - 1, restricted(first), first, !first);
    }

    /** What the whole board is worth when it is crosscut first, or ripped first. */
    private int restricted(boolean crosscut) {
        int most = crosscut && !isClear(0, nx - 1, 0, ny - 1) ? uncut(0, nx - 1, 0, ny - 1) : 0;
        for (int m = 1; m < nx - 1 && crosscut; m++) {
            most = Math.max(most, value(0, m, 0, ny - 1) + value(m, nx - 1, 0, ny - 1));
        }
        for (int m = 1; m < ny - 1 && !crosscut; m++) {
            most = Math.max(most, value(0, nx - 1, 0, m) + value(0, nx - 1, m, ny - 1));
        }
        return most;
    }

    long operations() {
        return operations;
    }

    private boolean isClear(int i, int j, int p, int q) {
        return (zonesAlong[i * nx + j] & zonesAcross[p * ny + q]) == 0;
    }

    private int value(int i, int j, int p, int q) {
        return worth[i * nx + j][p * ny + q];
    }

    private CutTree tree(int i, int j, int p, int q) {
        return isClear(i, j, p, q) ? CutTree.NO_CUT : cut(i, j, p, q, value(i, j, p, q), true, true);
    }

    private CutTree cut(int i, int j, int p, int q, int most, boolean crosscut, boolean rip) {
        if (crosscut && !isClear(i, j, p, q) && uncut(i, j, p, q) == most) {
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
