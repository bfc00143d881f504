package org.stockcutting.check;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;

/**
 * The most that edge-to-edge cuts in any number of stages can make of a clear rectangle, copies not capped: every rectangle is one
 * piece or is cut in two (Gilmore, Gomory, Operations Research 14, 1966). Kerfs are folded into pieces and board. Sizes are rounded
 * down to a grid, which is exact where they are multiples of it and never lowers the worth elsewhere; only sums of sizes are looked
 * at (Herz 1972).
 *
 * <p>What the saws reach is kept, trims left aside, as a cut through a trim is no smaller: the smaller side of a rip, the length of a rip,
 * the width of a crosscut. Other limits are dropped.
 */
final class GuillotineTable {

    private static final long MOST_CELLS = 3_000_000;
    private static final long MOST_STEPS = 1_200_000_000L;
    private static final long MOST_POINTS = 4_000;

    /** One way a piece may lie: grid sizes with kerf, worth; a stave's width is open and its worth grows with it. */
    private record Lying(int x, int y, Worth worth, boolean turned) {}

    private final Worth[] worths;
    private final long sizeX;
    private final long sizeY;
    private final long kerfX;
    private final long kerfY;
    private final long gridX;
    private final long gridY;
    private final long fence;
    private final long rip;
    private final long crosscut;
    private final List<Lying> lyings = new ArrayList<>();
    private int[] xs = {};
    private int[] ys = {};
    private int[] floorX = {};
    private int[] floorY = {};
    private long[][] best = {};

    private GuillotineTable(List<Worth> worths, long sizeX, long sizeY, long kerfX, long kerfY, SawLimits limits) {
        this.worths = worths.toArray(Worth[]::new);
        this.sizeX = sizeX;
        this.sizeY = sizeY;
        this.kerfX = kerfX;
        this.kerfY = kerfY;
        this.gridX = grid(sizeX, true);
        this.gridY = grid(sizeY, false);
        this.fence = units(limits.ripCapacity(), kerfY, gridY);
        this.rip = units(limits.longestRip(), kerfX, gridX);
        this.crosscut = units(limits.crosscutCapacity(), kerfY, gridY);
    }

    /** A limit on real extents, as one on grid sizes with kerf that are no larger than the real ones. */
    private static long units(@Nullable Length limit, long kerf, long grid) {
        return limit == null ? Long.MAX_VALUE : (limit.nanometres() + kerf) / grid;
    }

    /** The table of a board, zones left out; null where it would be too large. */
    static @Nullable GuillotineTable of(Board board, List<Worth> worths, Kerf kerf, SawLimits limits) {
        long crosscutKerf = kerf.crosscut().nanometres();
        long ripKerf = kerf.rip().nanometres();
        long sizeX = board.usable().length() + crosscutKerf;
        long sizeY = board.usable().width() + ripKerf;
        GuillotineTable table = new GuillotineTable(worths, sizeX, sizeY, crosscutKerf, ripKerf, limits);
        if (!table.lay(sizeX, sizeY)) {
            return null;
        }
        table.fill();
        return table;
    }

    /** The most worth of the whole board. */
    long best() {
        return best[xs.length - 1][ys.length - 1];
    }

    /** At least the most worth of clear rectangles of this length, by {@link #column}; sizes with the kerf folded in. */
    long[] row(long length) {
        return best[floorX[(int) (length / gridX)]];
    }

    /** Where rectangles of this width stand in a row. */
    int column(long width) {
        return floorY[(int) (width / gridY)];
    }

    /** Usable length, the kerf folded in. */
    long sizeX() {
        return sizeX;
    }

    /** Usable width, the kerf folded in. */
    long sizeY() {
        return sizeY;
    }

    long kerfX() {
        return kerfX;
    }

    long kerfY() {
        return kerfY;
    }

    /** Greatest common divisor of all sizes along an axis, made coarser where that is too fine. */
    private long grid(long size, boolean alongX) {
        long divisor = 0;
        for (Worth worth : worths) {
            long kerf = alongX ? kerfX : kerfY;
            if (worth.straight() && (alongX || !worth.isStave())) {
                divisor = gcd(divisor, (alongX ? worth.length() : worth.mostWidth()) + kerf);
            }
            if (worth.turned() && (!alongX || !worth.isStave())) {
                divisor = gcd(divisor, (alongX ? worth.mostWidth() : worth.length()) + kerf);
            }
        }
        return Math.max(Math.max(divisor, 1), size / MOST_POINTS + 1);
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /** Fills in how pieces lie and which points of the axes can be reached; false if there are too many. */
    private boolean lay(long sizeX, long sizeY) {
        int width = Math.toIntExact(sizeX / gridX);
        int height = Math.toIntExact(sizeY / gridY);
        for (Worth worth : worths) {
            if (worth.straight() && isReached(worth.length(), worth.leastWidth(), sizeX, sizeY)) {
                lyings.add(new Lying(
                        (int) ((worth.length() + kerfX) / gridX),
                        (int) ((worth.leastWidth() + kerfY) / gridY),
                        worth,
                        false));
            }
            if (worth.turned() && isReached(worth.leastWidth(), worth.length(), sizeX, sizeY)) {
                lyings.add(new Lying(
                        (int) ((worth.leastWidth() + kerfX) / gridX),
                        (int) ((worth.length() + kerfY) / gridY),
                        worth,
                        true));
            }
        }
        if (lyings.stream().anyMatch(l -> l.x == 0 || l.y == 0)) {
            return false;
        }
        xs = points(width, true);
        ys = points(height, false);
        long cells = (long) xs.length * ys.length;
        return cells <= MOST_CELLS && cells * (xs.length + ys.length) / 4 <= MOST_STEPS;
    }

    /** What is shorter than the board takes a crosscut as wide as itself at least, what is narrower a rip as long. */
    private boolean isReached(long x, long y, long sizeX, long sizeY) {
        return (x + kerfX == sizeX || (y + kerfY) / gridY <= crosscut)
                && (y + kerfY == sizeY || (x + kerfX) / gridX <= rip);
    }

    /** Sums of sizes up to the board's; every point where a stave's open width lies along the axis. */
    private int[] points(int size, boolean alongX) {
        BitSet reached = new BitSet(size + 1);
        if (lyings.stream().anyMatch(l -> l.worth.isStave() && l.turned == alongX)) {
            reached.set(0, size + 1);
        }
        reached.set(0);
        for (Lying lying : lyings) {
            int step = alongX ? lying.x : lying.y;
            for (int at = reached.nextSetBit(0); at >= 0 && at + step <= size; at = reached.nextSetBit(at + 1)) {
                reached.set(at + step);
            }
        }
        return reached.stream().toArray();
    }

    private void fill() {
        best = new long[xs.length][ys.length];
        floorX = floors(xs, (int) (sizeX / gridX));
        floorY = floors(ys, (int) (sizeY / gridY));
        int cut = 0;
        while (cut < ys.length && ys[cut] <= crosscut) {
            cut++;
        }
        for (int a = 0; a < xs.length; a++) {
            long[] row = best[a];
            if (a > 0) {
                System.arraycopy(best[a - 1], 0, row, 0, row.length);
            }
            singles(a, row);
            for (int i = 1; i < a && 2 * xs[i] <= xs[a]; i++) {
                long[] left = best[i];
                long[] right = best[floorX[xs[a] - xs[i]]];
                for (int b = 0; b < cut; b++) {
                    row[b] = Math.max(row[b], left[b] + right[b]);
                }
            }
            boolean ripped = xs[a] <= rip;
            for (int b = 1; b < row.length; b++) {
                long most = Math.max(row[b], row[b - 1]);
                for (int j = 1; ripped && j < b && ys[j] <= fence && 2 * ys[j] <= ys[b]; j++) {
                    most = Math.max(most, row[j] + row[floorY[ys[b] - ys[j]]]);
                }
                row[b] = most;
            }
        }
    }

    private void singles(int a, long[] row) {
        for (Lying lying : lyings) {
            if (lying.x <= xs[a]) {
                for (int b = 0; b < row.length; b++) {
                    if (lying.y <= ys[b]) {
                        row[b] = Math.max(row[b], worth(lying, xs[a], ys[b]));
                    }
                }
            }
        }
    }

    /** A stave takes the width there is; what rounding down may have hidden is given to it. */
    private long worth(Lying lying, int x, int y) {
        Worth worth = lying.worth;
        if (!worth.isStave()) {
            return worth.value();
        }
        long open = lying.turned ? (x + 1) * gridX - 1 - kerfX : (y + 1) * gridY - 1 - kerfY;
        return worth.value()
                * Math.min(worth.mostJointed(), open - worth.rough().perStave());
    }

    /** For every grid point the last reachable point at or before it. */
    private static int[] floors(int[] points, int size) {
        int[] floors = new int[size + 1];
        int point = 0;
        for (int at = 0; at < floors.length; at++) {
            while (point + 1 < points.length && points[point + 1] <= at) {
                point++;
            }
            floors[at] = point;
        }
        return floors;
    }
}
