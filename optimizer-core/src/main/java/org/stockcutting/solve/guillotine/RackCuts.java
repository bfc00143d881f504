package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.stockcutting.solve.instance.StockType;

/**
 * The best way to cut a board with bad zones at given places so that clear rests are left, whose worth a table knows. A part of the board
 * that still holds zones is crosscut at all their ends, or cut at a place into two such parts. What a part would be worth if it were clear
 * rules out most cuts unseen.
 */
final class RackCuts {

    /** Cells filled by one elementary operation. */
    private static final int FILLED = 8;

    private final Model model;
    private final PricingTable clear;
    private final PatternReader reader;
    private final List<StockType.ZoneRect> zones;
    private final int[] xs;
    private final int[] ys;
    private final int[][] zonesAlong;
    private final int[][] zonesAcross;
    private final int pairs;
    private final int[] known;
    private final List<Integer> cutsX = new ArrayList<>();
    private final List<Integer> cutsY = new ArrayList<>();
    private long operations;

    /**
     * @param zones those that matter, by their start
     * @param xs padded places of crosscuts, ascending, the ends included
     * @param ys the same of rips
     */
    RackCuts(Model model, PricingTable clear, List<StockType.ZoneRect> zones, int[] xs, int[] ys) {
        this.model = model;
        this.clear = clear;
        this.reader = new PatternReader(clear, true, PartOrder.FREE);
        this.zones = zones;
        this.xs = xs;
        this.ys = ys;
        this.zonesAlong = zonesBetween(xs, true);
        this.zonesAcross = zonesBetween(ys, false);
        this.pairs = ys.length * (ys.length - 1) / 2;
        this.known = new int[xs.length * (xs.length - 1) / 2 * pairs];
        this.operations = known.length / FILLED;
        Arrays.fill(known, -1);
    }

    /** Which zones lie between two places, as bits. */
    private int[][] zonesBetween(int[] places, boolean alongX) {
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
     * The best pattern, cut first as the shop wants it.
     *
     * @param unit what one unit of the table is worth
     */
    ExactPricing.Priced priced(double unit) {
        int j = xs.length - 1;
        int q = ys.length - 1;
        Boolean first = model.instance.limits().firstCut();
        int most = first == null ? value(0, j, 0, q) : best(0, j, 0, q, first, !first);
        Cell pattern = first == null ? read(0, j, 0, q) : cut(0, j, 0, q, most, first, !first);
        return new ExactPricing.Priced(most * unit, pattern);
    }

    /** Places at which the pattern is crosscut, besides the ends of zones. */
    List<Integer> cutsX() {
        return cutsX;
    }

    /** Places at which the pattern is ripped. */
    List<Integer> cutsY() {
        return cutsY;
    }

    long operations() {
        return operations;
    }

    private int zones(int i, int j, int p, int q) {
        return zonesAlong[i][j] & zonesAcross[p][q];
    }

    private int value(int i, int j, int p, int q) {
        if (zones(i, j, p, q) == 0) {
            return ifClear(i, j, p, q);
        }
        int at = (j * (j - 1) / 2 + i) * pairs + q * (q - 1) / 2 + p;
        if (known[at] < 0) {
            known[at] = best(i, j, p, q, true, true);
        }
        return known[at];
    }

    private int best(int i, int j, int p, int q, boolean crosscut, boolean rip) {
        int most = crosscut && zones(i, j, p, q) != 0 ? strip(i, j, p, q) : 0;
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
        return clear(xs[j] - xs[i], ys[q] - ys[p]);
    }

    private int clear(int length, int width) {
        return clear.at(clear.across.before(width), clear.along.before(length));
    }

    /** What is left when a part with zones is crosscut at all their ends. */
    private int strip(int i, int j, int p, int q) {
        int width = ys[q] - ys[p];
        int from = xs[i];
        int sum = 0;
        int held = zones(i, j, p, q);
        for (int z = 0; z < zones.size(); z++) {
            if ((held >> z & 1) != 0) {
                int to = before(z);
                sum += to > from ? clear(to - from, width) : 0;
                from = (int) Math.max(from, zones.get(z).x1());
            }
        }
        operations += 1 + Integer.bitCount(held);
        return xs[j] > from ? sum + clear(xs[j] - from, width) : sum;
    }

    /** The padded end of what ends before a zone. */
    private int before(int z) {
        return (int) (zones.get(z).x0() + model.kerfX);
    }

    private Cell readStrip(int i, int j, int p, int q) {
        List<Cell> parts = new ArrayList<>();
        int width = ys[q] - ys[p];
        int from = xs[i];
        int held = zones(i, j, p, q);
        for (int z = 0; z < zones.size(); z++) {
            if ((held >> z & 1) != 0) {
                int to = before(z);
                if (to > from) {
                    parts.add(reader.read(width, to - from));
                    from = to;
                }
                int behind = (int) Math.min(zones.get(z).x1(), xs[j]);
                if (behind > from) {
                    parts.add(Cell.rest(behind - from, width));
                    from = behind;
                }
            }
        }
        if (xs[j] > from) {
            parts.add(reader.read(width, xs[j] - from));
        }
        return Cell.join(true, xs[j] - xs[i], width, parts, PartOrder.FIXED);
    }

    private Cell read(int i, int j, int p, int q) {
        if (zones(i, j, p, q) == 0) {
            return reader.read(ys[q] - ys[p], xs[j] - xs[i]);
        }
        return cut(i, j, p, q, value(i, j, p, q), true, true);
    }

    private Cell cut(int i, int j, int p, int q, int most, boolean crosscut, boolean rip) {
        if (most > 0 && crosscut && zones(i, j, p, q) != 0 && strip(i, j, p, q) == most) {
            return readStrip(i, j, p, q);
        }
        long length = xs[j] - xs[i];
        long width = ys[q] - ys[p];
        for (int m = i + 1; m < j && most > 0 && crosscut; m++) {
            if (value(i, m, p, q) + value(m, j, p, q) == most) {
                cutsX.add(xs[m]);
                return join(true, length, width, read(i, m, p, q), read(m, j, p, q));
            }
        }
        for (int m = p + 1; m < q && most > 0 && rip; m++) {
            if (value(i, j, p, m) + value(i, j, m, q) == most) {
                cutsY.add(ys[m]);
                return join(false, length, width, read(i, j, p, m), read(i, j, m, q));
            }
        }
        return Cell.rest(length, width);
    }

    private static Cell join(boolean isCrosscut, long length, long width, Cell one, Cell other) {
        return Cell.join(isCrosscut, length, width, List.of(one, other), PartOrder.FIXED);
    }
}
