package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;
import org.stockcutting.solve.lp.RevisedSimplex;

/**
 * The Gilmore and Gomory linear programme over all stocks, solved by column generation with smoothed duals (Wentges, International
 * Transactions in Operational Research 4, 1997). Groups, saw limits and the most per board are left out, zones of large boards too, so
 * its value is a bound whatever restricts the plan. It can be left and taken up again.
 *
 * <p>Values here are floating; the certificate checker proves what the duals are worth.
 */
final class ColumnBound {

    /** Share of the best duals so far in the next ones that are priced. */
    private static final double SMOOTH = 0.9;
    /** A shortfall of one piece costs this many of the dearest board. */
    private static final double PENALTY = 100;

    /** Rounds that most jobs need, for each type. */
    private static final long ROUNDS_PER_TYPE = 3;

    private static final double TOLERANCE = 1e-7;
    /** Right-hand sides are moved apart by about this much, so that the simplex method seldom stands still (Charnes 1952). */
    private static final double SHIFT = 1e-7;

    private final Model model;
    private final int[] demand;
    private final long costUnit;
    private final double scale;
    private final PriceList prices;
    private final RevisedSimplex simplex;
    private final int[] rowOfType;
    private final int[] rowOfStock;
    private final Set<String> known = new HashSet<>();
    private final List<PriceList.Column> columns = new ArrayList<>();
    private double[] duals;
    private double[] most;
    private double best = Double.NEGATIVE_INFINITY;
    private boolean finished;
    private double smooth = SMOOTH;
    private long operations;
    private long rounds;
    private long steps;

    /**
     * @param demand pieces that are placed, by type
     * @param start duals to begin with, in cost units
     */
    ColumnBound(Model model, int[] demand, List<Double> start, long costUnit) {
        this.model = model;
        this.demand = demand.clone();
        this.costUnit = costUnit;
        this.prices = new PriceList(model);
        double dearest = 1;
        for (int s = 0; s < model.stocks; s++) {
            dearest = Math.max(dearest, model.stock(s).cost());
        }
        this.scale = dearest;
        this.duals = new double[model.types];
        this.most = new double[model.stocks];
        this.rowOfType = new int[model.types];
        this.rowOfStock = new int[model.stocks];
        int rows = 0;
        for (int t = 0; t < model.types; t++) {
            rowOfType[t] = demand[t] > 0 ? rows++ : -1;
            duals[t] = demand[t] > 0 ? start.get(t) : 0;
        }
        for (int s = 0; s < model.stocks; s++) {
            rowOfStock[s] = model.isLimited(s) ? rows++ : -1;
        }
        this.simplex = simplex(rows);
    }

    private RevisedSimplex simplex(int rows) {
        boolean[] atLeast = new boolean[rows];
        double[] sides = new double[rows];
        double[] penalties = new double[rows];
        for (int t = 0; t < model.types; t++) {
            if (rowOfType[t] >= 0) {
                int row = rowOfType[t];
                atLeast[row] = true;
                sides[row] = demand[t] + SHIFT * (1 + (row * 7919L % 101) / 101.0);
                penalties[row] = PENALTY;
            }
        }
        for (int s = 0; s < model.stocks; s++) {
            if (rowOfStock[s] >= 0) {
                sides[rowOfStock[s]] = model.stock(s).copies() + SHIFT * (1 + (s * 104_729L % 97) / 97.0);
            }
        }
        return new RevisedSimplex(atLeast, sides, penalties, 1e-9, this::count);
    }

    private boolean count(long more) {
        operations += more;
        return true;
    }

    /** Takes a plan's boards as columns. */
    void learn(Draft draft) {
        for (Board board : draft.boards) {
            add(PriceList.Column.of(board));
        }
    }

    /** Adds a column; false if it is empty or there already. */
    private boolean add(PriceList.Column column) {
        if (PriceList.isEmpty(column) || !known.add(column.stock() + Arrays.toString(column.counts()))) {
            return false;
        }
        columns.add(column);
        int[] rows = new int[model.types + 1];
        double[] values = new double[model.types + 1];
        int size = 0;
        for (int t = 0; t < model.types; t++) {
            if (rowOfType[t] >= 0 && column.counts()[t] > 0) {
                rows[size] = rowOfType[t];
                values[size++] = column.counts()[t];
            }
        }
        if (rowOfStock[column.stock()] >= 0) {
            rows[size] = rowOfStock[column.stock()];
            values[size++] = 1;
        }
        simplex.addColumn(
                model.stock(column.stock()).cost() / scale, Arrays.copyOf(rows, size), Arrays.copyOf(values, size));
        return true;
    }

    /** Goes on until no better bound is possible, the bound reaches this cost, or the meter ends. */
    void run(WorkMeter meter, long cost) {
        while (!finished && raised() < cost && !meter.isExhausted()) {
            round(meter);
        }
    }

    private void round(WorkMeter meter) {
        rounds++;
        long before = meter.used();
        solveAndPrice(meter);
        steps += meter.used() - before;
    }

    /** About how many steps are still needed until the bound is finished, by what a round has taken so far. */
    long stepsToGo() {
        return rounds == 0 ? Long.MAX_VALUE : Math.max(0, steps / rounds * (ROUNDS_PER_TYPE * model.types - rounds));
    }

    private void solveAndPrice(WorkMeter meter) {
        simplex.minimise();
        double[] y = simplex.duals();
        double[] exact = new double[model.types];
        double[] tried = new double[model.types];
        for (int t = 0; t < model.types; t++) {
            exact[t] = rowOfType[t] < 0 ? 0 : Math.max(0, y[rowOfType[t]]) * scale;
            tried[t] = smooth * duals[t] + (1 - smooth) * exact[t];
        }
        meter.spend(Weights.of(operations));
        operations = 0;
        PriceList.Prices found = prices.price(tried, meter);
        double bound = prices.bound(tried, demand, found);
        boolean better = bound > best + 1e-9 * Math.abs(bound);
        if (better) {
            best = bound;
            double factor = prices.factor(found);
            Arrays.setAll(duals, t -> factor * tried[t]);
            Arrays.setAll(most, s -> factor * found.value()[s]);
        }
        boolean added = false;
        for (PriceList.Column column : found.columns()) {
            added |= gains(column, exact, y) && add(column);
        }
        if (isSettled(y)) {
            finished = true;
        } else if (added) {
            smooth = SMOOTH;
        } else if (smooth == 0) {
            finished = true;
        } else {
            // The smoothed duals were too far off: nearer to those of the programme, at last these themselves.
            smooth = better && smooth > 0.5 ? smooth - 0.1 : smooth > 0.5 ? 0.5 : 0;
        }
    }

    /** True if the programme gets cheaper with this column. */
    private boolean gains(PriceList.Column column, double[] exact, double[] y) {
        double worth = 0;
        for (int t = 0; t < exact.length; t++) {
            worth += column.counts()[t] * exact[t];
        }
        int row = rowOfStock[column.stock()];
        double charge = model.stock(column.stock()).cost() + (row < 0 ? 0 : Math.max(0, -y[row]) * scale);
        return worth > charge + TOLERANCE * scale;
    }

    /** True if rounding up the programme's value would say no more than rounding up the bound does. */
    private boolean isSettled(double[] y) {
        double value = 0;
        for (int t = 0; t < model.types; t++) {
            value += rowOfType[t] < 0 ? 0 : y[rowOfType[t]] * demand[t];
        }
        for (int s = 0; s < model.stocks; s++) {
            value += rowOfStock[s] < 0 ? 0 : y[rowOfStock[s]] * model.stock(s).copies();
        }
        return raised(value * scale) <= raised();
    }

    boolean isFinished() {
        return finished;
    }

    /** All columns of the programme, in the order in which they came. */
    List<PriceList.Column> columns() {
        return columns;
    }

    PriceList prices() {
        return prices;
    }

    /** The bound before it is rounded up to what boards can cost; negative infinity before the first round. */
    double value() {
        return best;
    }

    /** The best bound so far, rounded up to a multiple of what all boards' costs are multiples of. */
    long raised() {
        return best == Double.NEGATIVE_INFINITY ? 0 : raised(best);
    }

    private long raised(double bound) {
        double safe = bound - 1e-6 * scale - 1e-9 * Math.abs(bound);
        return Math.max(0, (long) Math.ceil(safe / costUnit) * costUnit);
    }

    /** Says that boards must be worth as much as all pieces under the best duals. */
    void tell(PurchaseRows purchases) {
        if (best > Double.NEGATIVE_INFINITY) {
            purchases.setFirst(duals, most);
        }
    }

    /** Worth of one piece of each type in cost units: what the bound follows from. */
    List<Double> duals() {
        return Arrays.stream(duals).boxed().toList();
    }
}
