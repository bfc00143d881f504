package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.lp.RevisedSimplex;

/**
 * The linear programme over known patterns for what is still missing. A pattern counts no more pieces of a type than are missing, so it
 * never gains by pieces that nobody wants.
 */
final class RestProgramme {

    /** A shortfall of one piece costs this many of the dearest board. */
    private static final double PENALTY = 100;

    private final Model model;
    private final double[] costs;
    private final int[] most;
    private final double scale;
    private final int[] rowOfType;
    private final int[] rowOfStock;
    private final RevisedSimplex simplex;
    private final Set<List<Integer>> known = new HashSet<>();
    private final List<PriceList.Column> columns = new ArrayList<>();
    private double[] duals = {};
    private long operations;

    /** @param rest what is missing, and the boards that may still be taken */
    RestProgramme(Model model, Draft rest) {
        this(model, rest, Allowance.of(model, Long.MAX_VALUE));
    }

    /** With no more boards in all than these. */
    RestProgramme(Model model, Draft rest, Allowance allowed) {
        this(model, rest, allowed, costs(model), null);
    }

    private static double[] costs(Model model) {
        double[] costs = new double[model.stocks];
        Arrays.setAll(costs, s -> model.stock(s).cost());
        return costs;
    }

    /**
     * @param allowed the most boards in all
     * @param costs what a board of each stock counts
     * @param shortfall what a piece counts that is left out; null to leave nothing out if it can be helped
     */
    RestProgramme(Model model, Draft rest, Allowance allowed, double[] costs, double @Nullable [] shortfall) {
        int[] available = allowed.left(rest);
        this.model = model;
        this.costs = costs.clone();
        this.most = most(rest);
        this.rowOfType = new int[model.types];
        this.rowOfStock = new int[model.stocks];
        double dearest = 1;
        int rows = 0;
        for (int t = 0; t < model.types; t++) {
            rowOfType[t] = rest.left[t] > 0 && model.hasPlace(t) ? rows++ : -1;
            dearest = shortfall == null ? dearest : Math.max(dearest, shortfall[t]);
        }
        for (int s = 0; s < model.stocks; s++) {
            dearest = Math.max(dearest, costs[s]);
            rowOfStock[s] = available[s] < Integer.MAX_VALUE ? rows++ : -1;
        }
        this.scale = dearest;
        boolean[] atLeast = new boolean[rows];
        double[] sides = new double[rows];
        double[] penalties = new double[rows];
        for (int t = 0; t < model.types; t++) {
            if (rowOfType[t] >= 0) {
                atLeast[rowOfType[t]] = true;
                sides[rowOfType[t]] = rest.left[t];
                penalties[rowOfType[t]] = shortfall == null ? PENALTY : shortfall[t] / dearest;
            }
        }
        for (int s = 0; s < model.stocks; s++) {
            if (rowOfStock[s] >= 0) {
                sides[rowOfStock[s]] = available[s];
            }
        }
        this.simplex = new RevisedSimplex(atLeast, sides, penalties, 1e-9, this::count);
    }

    /** Most pieces of each type that a further board may give. */
    static int[] most(Draft rest) {
        int[] most = rest.left.clone();
        for (int t = 0; t < most.length; t++) {
            most[t] = Math.min(most[t], rest.yard.model.item(t).perBoard());
        }
        return most;
    }

    private boolean count(long more) {
        operations += more;
        return true;
    }

    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }

    /** Adds a pattern; false if what is missing makes it empty or equal to one that is there. */
    boolean add(PriceList.Column column) {
        int[] rows = new int[model.types + 1];
        double[] values = new double[model.types + 1];
        List<Integer> key = new ArrayList<>();
        key.add(column.stock());
        int size = 0;
        for (int t = 0; t < model.types; t++) {
            double count = Math.min(column.counts()[t], most[t]);
            if (count > 0 && rowOfType[t] >= 0) {
                key.add(t);
                key.add((int) count);
                rows[size] = rowOfType[t];
                values[size++] = count;
            }
        }
        if (size == 0 || !known.add(key)) {
            return false;
        }
        if (rowOfStock[column.stock()] >= 0) {
            rows[size] = rowOfStock[column.stock()];
            values[size++] = 1;
        }
        columns.add(column);
        simplex.addColumn(costs[column.stock()] / scale, Arrays.copyOf(rows, size), Arrays.copyOf(values, size));
        return true;
    }

    void solve() {
        simplex.minimise();
        duals = simplex.duals();
    }

    /** Least cost of what is missing, in fractions of boards. */
    double value() {
        return simplex.objective() * scale;
    }

    List<PriceList.Column> columns() {
        return columns;
    }

    /** How many boards are cut by a column. */
    double use(int column) {
        return simplex.value(column);
    }

    /** Worth of one piece of each type, 0 where none is missing. */
    double[] worths() {
        double[] worths = new double[model.types];
        for (int t = 0; t < worths.length; t++) {
            worths[t] = rowOfType[t] < 0 ? 0 : Math.max(0, duals[rowOfType[t]]) * scale;
        }
        return worths;
    }

    /** What the programme gains with one board of this column. */
    double gain(PriceList.Column column, double[] worths) {
        double gain = -costs[column.stock()];
        for (int t = 0; t < worths.length; t++) {
            gain += Math.min(column.counts()[t], most[t]) * worths[t];
        }
        int row = rowOfStock[column.stock()];
        return row < 0 ? gain : gain + Math.min(0, duals[row]) * scale;
    }

    /** What the programme gains with one board of this stock whose pieces have this worth in all. */
    double gain(int stock, double worth) {
        int row = rowOfStock[stock];
        return worth - costs[stock] + (row < 0 ? 0 : Math.min(0, duals[row]) * scale);
    }
}
