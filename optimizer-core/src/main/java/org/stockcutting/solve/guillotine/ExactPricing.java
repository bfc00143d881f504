package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The most that edge-to-edge cuts in any number of stages can make of one board when pieces have given worths, copies not capped, zones
 * left out (Gilmore, Gomory, Operations Research 14, 1966), in full units on the points of Herz. Of the saw limits those that a cut
 * meets or not whatever was cut before are kept: {@link Reach}.
 *
 * <p>The table is filled line by line along the shorter axis, with limits along the board. A line that equals the one before is shared with it. Lines are joined by a
 * vector maximum, and only lines that hold more than their own halves do are joined with others; within a line only such jumps are
 * pushed on (in the manner of Terno, Lindemann, Scheithauer, Zuschnittprobleme und ihre praktische Loesung, 1987).
 */
final class ExactPricing {

    private static final double MOST_CELLS = 8_000_000;
    /** Some tenths of a second: the clock is not asked while a table is filled. */
    static final double MOST_WORK = 1e9;

    /** Worth of a full board by area, in whole units; piece worths are rounded up to such units. */
    private static final double FULL = 1e9;

    private final Model model;
    private final int stock;
    private final boolean lyingLines;
    private final Reach reach;
    private final PartOrder order;
    private long operations;

    /** One way a piece may lie: extents across and along lines. */
    record Lying(int type, boolean turned, int across, int along, int value) {}

    /**
     * What was found.
     *
     * @param value no pattern is worth more; above the true most by less than one part in a million
     * @param pattern a pattern of that worth, padded
     */
    record Priced(double value, Cell pattern) {}

    ExactPricing(Model model, int stock) {
        this.model = model;
        this.stock = stock;
        this.reach = Reach.of(model, stock);
        this.order = new SawRules(model, stock).order();
        this.lyingLines = !reach.isFree() || model.boardLength(stock) > model.boardWidth(stock);
    }

    /** True if one table stays small enough, whatever pieces are worth. */
    static boolean suits(Model model, int stock) {
        return work(model, stock) <= MOST_WORK;
    }

    /** Most operations of one table, roughly; infinite where it would take too much memory. */
    static double work(Model model, int stock) {
        if (model.boardLength(stock) >= Points.LONGEST || model.boardWidth(stock) >= Points.LONGEST) {
            return Double.POSITIVE_INFINITY;
        }
        double[] one = new double[model.types];
        Arrays.fill(one, 1);
        ExactPricing pricing = new ExactPricing(model, stock);
        List<Lying> lyings = pricing.lyings(one, 1);
        double lines = pricing.points(lyings, true).count();
        double cells = lines * pricing.points(lyings, false).count();
        return cells > MOST_CELLS ? Double.POSITIVE_INFINITY : cells * (1 + lines / 8);
    }

    /** @param worth of one piece of each type; those at or below 0 are never cut */
    Priced price(double[] worth) {
        double unit = unit(model, stock, worth);
        if (unit == 0) {
            return new Priced(0, Cell.rest(model.boardLength(stock), model.boardWidth(stock)));
        }
        List<Lying> lyings = lyings(worth, unit);
        PricingTable table = new PricingTable(points(lyings, true), points(lyings, false), lyings, reach);
        operations += table.fill();
        return new Priced(
                table.most() * unit,
                new PatternReader(table, lyingLines, order.movable() ? order : PartOrder.FREE).whole());
    }

    /** What one whole unit of the table is worth: a board full of the type that is worth most by area has {@link #FULL} of them. */
    static double unit(Model model, int stock, double[] worth) {
        double dense = 0;
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                if (model.allows(stock, t, turned)) {
                    double area = (double) model.length(stock, t, turned) * model.width(stock, t, turned);
                    dense = Math.max(dense, worth[t] / area);
                }
            }
        }
        return dense * model.boardArea(stock) / FULL;
    }

    private List<Lying> lyings(double[] worth, double unit) {
        List<Lying> lyings = new ArrayList<>();
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                if (worth[t] > 0 && model.allows(stock, t, turned)) {
                    int length = (int) model.length(stock, t, turned);
                    int width = (int) model.width(stock, t, turned);
                    lyings.add(new Lying(t, turned, lyingLines ? width : length, lyingLines ? length : width, (int)
                            Math.ceil(worth[t] / unit)));
                }
            }
        }
        return lyings;
    }

    private Points points(List<Lying> lyings, boolean across) {
        int[] sizes = lyings.stream()
                .mapToInt(l -> across ? l.across() : l.along())
                .distinct()
                .toArray();
        boolean alongX = across != lyingLines;
        return new Points((int) (alongX ? model.boardLength(stock) : model.boardWidth(stock)), sizes, reach.isFree());
    }

    /** Operations since the last call. */
    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
