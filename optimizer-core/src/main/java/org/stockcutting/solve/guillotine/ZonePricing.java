package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.stockcutting.solve.instance.StockType;

/**
 * The most that edge-to-edge cuts can make of one board with bad zones when pieces have given worths, copies not capped, saw limits left
 * out: every rectangle between two places across and two places along is worth its best cut or its best single piece (the recursion of
 * Gilmore, Gomory, Operations Research 14, 1966, on absolute places as in Afsharian, Niknejad, Waescher, OR Spectrum 36, 2014).
 *
 * <p>Places are sums of pieces from the origin or from behind a zone: any pattern can be pushed towards the origin until every piece lies
 * at such a place. Zones of metal stop pieces but not cuts here, so with metal the value is a bound only.
 */
final class ZonePricing {

    private static final double MOST_CELLS = 6_000_000;
    private final Model model;
    private final int stock;
    private final int[] xs;
    private final int[] ys;

    /** One way a piece may lie; padded extents. */
    private record Way(int type, boolean turned, long length, long width, int value) {}

    ZonePricing(Model model, int stock) {
        this.model = model;
        this.stock = stock;
        this.xs = places(true);
        this.ys = places(false);
    }

    /** Most operations of one table, roughly; infinite where it would take too much memory. */
    static double work(Model model, int stock) {
        if (Math.max(model.boardLength(stock), model.boardWidth(stock)) >= Points.LONGEST) {
            return Double.POSITIVE_INFINITY;
        }
        return new ZonePricing(model, stock).work();
    }

    /** Most operations of one table, roughly. */
    double work() {
        double nx = xs.length;
        double ny = ys.length;
        double cells = nx * nx * ny * ny / 2;
        return cells > MOST_CELLS ? Double.POSITIVE_INFINITY : cells * (nx + ny) / 6;
    }

    private int[] places(boolean alongX) {
        int size = (int) (alongX ? model.boardLength(stock) : model.boardWidth(stock));
        BitSet reached = new BitSet(size + 1);
        reached.set(0);
        for (StockType.ZoneRect zone : model.stock(stock).zones()) {
            long end = alongX ? zone.x1() : zone.y1();
            if (end > 0 && end < size) {
                reached.set((int) end);
            }
        }
        int least = size;
        List<Integer> sizes = sizes(alongX);
        for (int p = 0; p >= 0; p = reached.nextSetBit(p + 1)) {
            for (int step : sizes) {
                least = Math.min(least, step);
                if (p + step <= size) {
                    reached.set(p + step);
                }
            }
        }
        // Nothing starts so late, so a piece that ends there may as well end with the board.
        reached.clear(size - least + 1, size + 1);
        reached.set(size);
        return reached.stream().toArray();
    }

    private List<Integer> sizes(boolean alongX) {
        List<Integer> sizes = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                if (model.allows(stock, t, turned)) {
                    sizes.add((int) (alongX ? model.length(stock, t, turned) : model.width(stock, t, turned)));
                }
            }
        }
        return sizes.stream().distinct().sorted().toList();
    }

    /** @param worth of one piece of each type; those at or below 0 are never cut */
    ExactPricing.Priced price(double[] worth) {
        double unit = ExactPricing.unit(model, stock, worth);
        if (unit == 0) {
            return new ExactPricing.Priced(0, Cell.rest(model.boardLength(stock), model.boardWidth(stock)));
        }
        Table table = new Table(ways(worth, unit));
        return new ExactPricing.Priced(table.most() * unit, table.read(0, xs.length - 1, 0, ys.length - 1));
    }

    private List<Way> ways(double[] worth, double unit) {
        List<Way> ways = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                if (worth[t] > 0 && model.allows(stock, t, turned)) {
                    int value = (int) Math.ceil(worth[t] / unit);
                    ways.add(new Way(t, turned, model.length(stock, t, turned), model.width(stock, t, turned), value));
                }
            }
        }
        return ways;
    }

    /** Best worth of every rectangle between places i and j across, p and q along. */
    private final class Table {
        private final List<Way> ways;
        private final int ny = ys.length;
        private final int[][][] best = new int[xs.length][xs.length][];

        Table(List<Way> ways) {
            this.ways = ways;
            for (int span = 1; span < xs.length; span++) {
                for (int i = 0; i + span < xs.length; i++) {
                    best[i][i + span] = strip(i, i + span);
                }
            }
        }

        int most() {
            return best[0][xs.length - 1][ny - 1];
        }

        private int[] strip(int i, int j) {
            int[] worth = new int[ny * ny];
            for (int m = i + 1; m < j; m++) {
                raise(worth, best[i][m], best[m][j]);
            }
            singles(i, j, worth);
            for (int span = 2; span < ny; span++) {
                for (int p = 0; p + span < ny; p++) {
                    int q = p + span;
                    int most = worth[p * ny + q];
                    for (int m = p + 1; m < q; m++) {
                        most = Math.max(most, worth[p * ny + m] + worth[m * ny + q]);
                    }
                    worth[p * ny + q] = most;
                }
            }
            return worth;
        }

        /** Kept this plain so that the compiler turns it into vector instructions. */
        private static void raise(int[] worth, int[] left, int[] right) {
            for (int k = 0; k < worth.length; k++) {
                worth[k] = Math.max(worth[k], left[k] + right[k]);
            }
        }

        /** Pieces for which j is the first place behind them; wider strips get them by a cut. */
        private void singles(int i, int j, int[] worth) {
            for (Way way : ways) {
                long end = xs[i] + way.length();
                if (end > xs[j] || end <= xs[j - 1]) {
                    continue;
                }
                for (int p = 0; p < ny - 1; p++) {
                    int q = behind(ys[p] + way.width());
                    if (q < ny && model.isClear(stock, way.type(), xs[i], ys[p], way.length(), way.width())) {
                        worth[p * ny + q] = Math.max(worth[p * ny + q], way.value());
                    }
                }
            }
        }

        private static final int NONE = Integer.MAX_VALUE;

        private int behind(long place) {
            int k = Arrays.binarySearch(ys, (int) place);
            int index = k >= 0 ? k : -k - 1;
            return index < ny ? index : NONE;
        }

        Cell read(int i, int j, int p, int q) {
            long length = xs[j] - xs[i];
            long width = ys[q] - ys[p];
            int worth = best[i][j][p * ny + q];
            if (worth == 0) {
                return Cell.rest(length, width);
            }
            for (int m = i + 1; m < j; m++) {
                if (best[i][m][p * ny + q] + best[m][j][p * ny + q] == worth) {
                    return Cell.join(true, length, width, List.of(read(i, m, p, q), read(m, j, p, q)), PartOrder.FIXED);
                }
            }
            for (int m = p + 1; m < q; m++) {
                if (best[i][j][p * ny + m] + best[i][j][m * ny + q] == worth) {
                    return Cell.join(
                            false, length, width, List.of(read(i, j, p, m), read(i, j, m, q)), PartOrder.FIXED);
                }
            }
            return single(i, j, p, q, worth);
        }

        private Cell single(int i, int j, int p, int q, int worth) {
            long length = xs[j] - xs[i];
            long width = ys[q] - ys[p];
            for (Way way : ways) {
                if (way.value() == worth
                        && way.length() <= length
                        && way.width() <= width
                        && model.isClear(stock, way.type(), xs[i], ys[p], way.length(), way.width())) {
                    Cell cell = Cell.piece(way.type(), way.turned(), way.length(), way.width());
                    if (way.width() < width) {
                        Cell rest = Cell.rest(way.length(), width - way.width());
                        cell = Cell.join(false, way.length(), width, List.of(cell, rest), PartOrder.FIXED);
                    }
                    if (way.length() < length) {
                        Cell rest = Cell.rest(length - way.length(), width);
                        cell = Cell.join(true, length, width, List.of(cell, rest), PartOrder.FIXED);
                    }
                    return cell;
                }
            }
            throw new IllegalStateException("no pattern of worth " + worth + " in " + length + " x " + width);
        }
    }
}
