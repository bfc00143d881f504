package org.stockcutting.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * At least the most that edge-to-edge cuts in any number of stages can make of a board with bad zones, copies not capped: the recursion of
 * Gilmore and Gomory (Operations Research 14, 1966) over rectangles between places of the board, as in Afsharian, Niknejad, Waescher (OR
 * Spectrum 36, 2014), but with some places standing for all where there are too many ({@link Places}).
 *
 * <p>Why it is never too low. Let a rectangle of a pattern, taken between places outwards, lie between i and j along and p and q across.
 * If it is clear of zones, it holds no more than a clear rectangle of the outward size. If not, and if it is no single piece that takes
 * its zones, then its pieces lie in a smaller rectangle, which trims the case, or a cut parts it into two with a piece in each. A cut
 * at place m leaves i to m and m to j. One inside the cell from m to m + 1 leaves parts within i to m + 1 and within m to j: both are
 * counted in full, so the wood of the cell is counted twice. No open cell is longer than the shortest piece with its cut; so both parts
 * are shorter than the whole, and the recursion ends. A zone counts only where the rectangle is sure to hold some of it, wherever in the
 * outer cells it really ends. The clear rectangle of the outward size bounds every case.
 */
final class ZoneTable {

    /** Zones and their steps are bits of a long. */
    private static final int MOST_BANS = Long.SIZE - 1;

    private static final int MOST_CELLS = 6_000_000;

    /** Values are whole units so large that a full board has about so many. */
    private static final int BITS = 29;

    /** One way a piece may lie, kerfs folded in, and the bans it must keep clear of, as bits. */
    private record Lying(long x, long y, int value, long bans) {}

    private final List<Ban> bans;
    private final GuillotineTable clear;
    private final List<Lying> lyings;
    private final Places along;
    private final Places across;
    private final int shift;
    private final long leastX;
    /** For each place across the first at which a piece that starts there can end. */
    private final int[] first;
    /** Where the row of a place across starts in a slab; the cell of p and q stands at {@code row[p] + q}, q from the first on. */
    private final int[] row;

    private final int cells;
    /** For each cell where clear rectangles of its width stand in the table. */
    private final int[] columns;

    private final int[][][] slabs;
    private final long[][] bansAlong;
    private final long[][] bansAcross;

    private ZoneTable(
            List<Ban> bans, GuillotineTable clear, List<Lying> lyings, Places along, Places across, int shift) {
        this.bans = bans;
        this.clear = clear;
        this.lyings = lyings;
        this.along = along;
        this.across = across;
        this.shift = shift;
        this.leastX = lyings.stream().mapToLong(Lying::x).min().orElse(clear.sizeX());
        long leastY = lyings.stream().mapToLong(Lying::y).min().orElse(clear.sizeY());
        long[] at = across.at();
        this.first = new int[at.length];
        this.row = new int[at.length];
        int next = 0;
        for (int p = 0; p < at.length; p++) {
            first[p] = p + 1;
            while (first[p] < at.length && at[first[p]] - at[p] < leastY) {
                first[p]++;
            }
            row[p] = next - first[p];
            next += at.length - first[p];
        }
        this.cells = next;
        this.columns = new int[cells];
        for (int p = 0; p < at.length; p++) {
            for (int q = first[p]; q < at.length; q++) {
                columns[row[p] + q] = clear.column(at[q] - at[p]);
            }
        }
        this.slabs = new int[along.count()][along.count()][];
        this.bansAlong = held(along, true);
        this.bansAcross = held(across, false);
    }

    /**
     * The most worth, or {@link Long#MAX_VALUE} where nothing better than the clear board is known.
     *
     * @param bans where some pieces must not lie
     * @param work elementary operations that are worth it
     */
    static long best(List<Worth> worths, List<Ban> bans, GuillotineTable clear, long work) {
        if (bans.isEmpty() || worths.stream().anyMatch(Worth::isStave)) {
            return Long.MAX_VALUE;
        }
        List<Ban> most = bans.subList(0, Math.min(bans.size(), MOST_BANS));
        int shift = Math.max(0, Long.SIZE - Long.numberOfLeadingZeros(clear.best()) - BITS);
        List<Lying> lyings = lyings(worths, most, clear, shift);
        ZoneGrid grid = ZoneGrid.of(
                new ZoneGrid.Axis(
                        clear.sizeX(),
                        lyings.stream().mapToLong(Lying::x).toArray(),
                        most.stream().mapToLong(Ban::x1).toArray(),
                        most.stream().mapToLong(ban -> ban.x0() + clear.kerfX()).toArray()),
                new ZoneGrid.Axis(
                        clear.sizeY(),
                        lyings.stream().mapToLong(Lying::y).toArray(),
                        most.stream().mapToLong(Ban::y1).toArray(),
                        most.stream().mapToLong(ban -> ban.y0() + clear.kerfY()).toArray()),
                work,
                MOST_CELLS);
        if (grid == null) {
            return Long.MAX_VALUE;
        }
        long units = new ZoneTable(most, clear, lyings, grid.along(), grid.across(), shift).fill();
        return Math.min(units << shift, clear.best());
    }

    private static List<Lying> lyings(List<Worth> worths, List<Ban> bans, GuillotineTable clear, int shift) {
        List<Lying> lyings = new ArrayList<>();
        for (Worth worth : worths) {
            long banned = 0;
            for (int b = 0; b < bans.size(); b++) {
                banned |= bans.get(b).parts().contains(worth.rough().part().id()) ? 1L << b : 0;
            }
            int value = units(worth.value(), shift);
            long length = worth.length();
            long width = worth.leastWidth();
            if (worth.straight()) {
                lyings.add(new Lying(length + clear.kerfX(), width + clear.kerfY(), value, banned));
            }
            if (worth.turned()) {
                lyings.add(new Lying(width + clear.kerfX(), length + clear.kerfY(), value, banned));
            }
        }
        return lyings;
    }

    /** Rounded up. */
    private static int units(long value, int shift) {
        return Math.toIntExact((value >> shift) + ((value & ((1L << shift) - 1)) == 0 ? 0 : 1));
    }

    /** Which bans every rectangle is sure to hold some of that lies between two places outwards. */
    private long[][] held(Places places, boolean alongX) {
        long kerf = alongX ? clear.kerfX() : clear.kerfY();
        int n = places.count();
        long[][] held = new long[n][n];
        for (int b = 0; b < bans.size(); b++) {
            long from = alongX ? bans.get(b).x0() : bans.get(b).y0();
            long to = alongX ? bans.get(b).x1() : bans.get(b).y1();
            for (int i = 0; i < n; i++) {
                for (int j = i + 1; j < n; j++) {
                    boolean sure = from < places.earliestEnd(j) - kerf && to > places.latestStart(i);
                    held[i][j] |= sure ? 1L << b : 0;
                }
            }
        }
        return held;
    }

    private int fill() {
        int nx = along.count();
        int[] nothing = new int[cells];
        for (int span = 1; span < nx; span++) {
            for (int i = 0; i + span < nx; i++) {
                boolean holds = along.at()[i + span] - along.at()[i] >= leastX;
                slabs[i][i + span] = holds ? slab(i, i + span) : nothing;
            }
        }
        return cells == 0 ? 0 : slabs[0][nx - 1][row[0] + across.count() - 1];
    }

    /** The most worth between two places along, for all pairs of places across. */
    private int[] slab(int i, int j) {
        int[] most = ifClear(along.at()[j] - along.at()[i]);
        if (bansAlong[i][j] == 0) {
            return most;
        }
        int[] slab = new int[cells];
        if (j - i > 1) {
            raise(slab, slabs[i + 1][j]);
            raise(slab, slabs[i][j - 1]);
        }
        for (int m = i + 1; m < j; m++) {
            int behind = along.open()[m - 1] && m - 1 > i ? m - 1 : m;
            boolean both = along.at()[m] - along.at()[i] >= leastX && along.at()[j] - along.at()[behind] >= leastX;
            if (both) {
                raise(slab, slabs[i][m], slabs[behind][j]);
            }
        }
        singles(i, j, slab);
        for (int p = across.count() - 2; p >= 0; p--) {
            rip(p, bansAlong[i][j], slab, most);
        }
        return slab;
    }

    /** Kept this plain so that the compiler turns it into vector instructions. */
    private static void raise(int[] slab, int[] one) {
        for (int k = 0; k < slab.length; k++) {
            slab[k] = Math.max(slab[k], one[k]);
        }
    }

    private static void raise(int[] slab, int[] left, int[] right) {
        for (int k = 0; k < slab.length; k++) {
            slab[k] = Math.max(slab[k], left[k] + right[k]);
        }
    }

    private int[] ifClear(long length) {
        long[] known = clear.row(length);
        int[] worth = new int[known.length];
        Arrays.setAll(worth, k -> units(known[k], shift));
        int[] slab = new int[cells];
        for (int k = 0; k < slab.length; k++) {
            slab[k] = worth[columns[k]];
        }
        return slab;
    }

    /** Pieces that lie where other pieces may not. */
    private void singles(int i, int j, int[] slab) {
        long length = along.at()[j] - along.at()[i];
        long[] at = across.at();
        for (Lying lying : lyings) {
            if (lying.x > length || (lying.bans & bansAlong[i][j]) == bansAlong[i][j]) {
                continue;
            }
            for (int p = 0; p < at.length; p++) {
                for (int q = first[p]; q < at.length; q++) {
                    long held = bansAlong[i][j] & bansAcross[p][q];
                    if (lying.y <= at[q] - at[p] && (lying.bans & held) == 0) {
                        slab[row[p] + q] = Math.max(slab[row[p] + q], lying.value);
                    }
                }
            }
        }
    }

    /** All that starts at one place across; what starts behind it is done. */
    private void rip(int p, long held, int[] slab, int[] most) {
        int n = across.count();
        int from = row[p];
        for (int q = first[p + 1]; q < n; q++) {
            slab[from + q] = Math.max(slab[from + q], slab[row[p + 1] + q]);
        }
        int before = 0;
        for (int m = first[p]; m < n; m++) {
            boolean isClear = (held & bansAcross[p][m]) == 0;
            int value = isClear ? most[from + m] : Math.min(most[from + m], Math.max(slab[from + m], before));
            slab[from + m] = value;
            // With no more in front than one place before, a cut here is no better than one there.
            if (value > before) {
                int behind = across.open()[m - 1] && m - 1 > p ? m - 1 : m;
                join(slab, value, from, row[behind], Math.max(m + 1, first[behind]), n);
            }
            before = value;
        }
    }

    private static void join(int[] slab, int value, int into, int behind, int from, int to) {
        for (int q = from; q < to; q++) {
            slab[into + q] = Math.max(slab[into + q], value + slab[behind + q]);
        }
    }
}
