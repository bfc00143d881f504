package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;
import org.stockcutting.solve.lp.RevisedSimplex;

/**
 * Rules out one purchase after the other, the cheapest first, until one is met whose boards could hold everything if they might be cut to
 * fractions of patterns: its cost is a bound. A linear programme over the boards of a purchase looks for the least that is missing;
 * worths of pieces under which all boards together are worth less than all pieces rule the purchase out, and others with it. It can
 * be left and taken up again.
 */
final class PurchaseBound {

    private static final double SMOOTH = 0.7;
    private static final double TOLERANCE = 1e-7;
    private static final double SHIFT = 1e-7;
    /** Share of all wood of which no more than this is missing counts as nothing. */
    private static final double NOTHING = 1e-5;

    private final Model model;
    private final int[] demand;
    private final ColumnBound bound;
    private final PurchaseRows purchases;
    private final RevisedSimplex simplex;
    private final int[] rowOfType;
    private final int[] rowOfStock;
    private final double scale;
    private int learnt;
    private int @Nullable [] target;
    private double[] centre = {};
    private boolean smoothed;
    private boolean finished;
    private long operations;

    /** @param demand pieces that are placed, by type */
    PurchaseBound(Model model, int[] demand, ColumnBound bound, PurchaseRows purchases) {
        this.model = model;
        this.demand = demand.clone();
        this.bound = bound;
        this.purchases = purchases;
        this.rowOfType = new int[model.types];
        this.rowOfStock = new int[model.stocks];
        int rows = 0;
        double all = 0;
        for (int t = 0; t < model.types; t++) {
            rowOfType[t] = demand[t] > 0 ? rows++ : -1;
            all += demand[t] * model.area(t);
        }
        this.scale = all;
        int types = rows;
        for (int s = 0; s < model.stocks; s++) {
            rowOfStock[s] = rows++;
        }
        boolean[] atLeast = new boolean[rows];
        Arrays.fill(atLeast, 0, types, true);
        double[] sides = new double[rows];
        double[] penalties = new double[rows];
        for (int t = 0; t < model.types; t++) {
            if (rowOfType[t] >= 0) {
                sides[rowOfType[t]] = demand[t] - SHIFT * (1 + (t * 7919L % 101) / 101.0);
                penalties[rowOfType[t]] = model.area(t) / scale;
            }
        }
        this.simplex = new RevisedSimplex(atLeast, sides, penalties, 1e-11, this::count);
    }

    private boolean count(long more) {
        operations += more;
        return true;
    }

    /** True if the cheapest purchase that is left cannot be ruled out this way. */
    boolean isFinished() {
        return finished;
    }

    /** Goes on until nothing that costs less than this is left, the cheapest that is left cannot be ruled out, or the meter ends. */
    void run(WorkMeter meter, long cost) {
        learn();
        while (!finished && !meter.isExhausted()) {
            int[] least = purchases.least(cost - 1);
            if (least == null) {
                return;
            }
            if (!Arrays.equals(least, target)) {
                aim(least);
            }
            round(least, meter);
        }
    }

    private void learn() {
        List<PriceList.Column> columns = bound.columns();
        for (; learnt < columns.size(); learnt++) {
            add(columns.get(learnt));
        }
    }

    private void add(PriceList.Column column) {
        int[] rows = new int[model.types + 1];
        double[] values = new double[model.types + 1];
        int size = 0;
        for (int t = 0; t < model.types; t++) {
            if (rowOfType[t] >= 0 && column.counts()[t] > 0) {
                rows[size] = rowOfType[t];
                values[size++] = column.counts()[t];
            }
        }
        rows[size] = rowOfStock[column.stock()];
        values[size++] = 1;
        simplex.addColumn(0, Arrays.copyOf(rows, size), Arrays.copyOf(values, size));
    }

    private void aim(int[] counts) {
        target = counts.clone();
        for (int s = 0; s < counts.length; s++) {
            simplex.setRightHandSide(rowOfStock[s], counts[s]);
        }
        smoothed = false;
    }

    private void round(int[] counts, WorkMeter meter) {
        simplex.minimise();
        double[] y = simplex.duals();
        meter.spend(Weights.of(operations));
        operations = 0;
        if (simplex.objective() < NOTHING) {
            finished = true;
            return;
        }
        double[] exact = new double[model.types];
        double[] tried = new double[model.types];
        for (int t = 0; t < exact.length; t++) {
            exact[t] = rowOfType[t] < 0 ? 0 : Math.max(0, y[rowOfType[t]]);
            tried[t] = smoothed ? SMOOTH * centre[t] + (1 - SMOOTH) * exact[t] : exact[t];
        }
        PriceList.Prices found = bound.prices().price(tried, meter);
        double worth = 0;
        double held = 0;
        for (int t = 0; t < tried.length; t++) {
            worth += tried[t] * demand[t];
        }
        for (int s = 0; s < counts.length; s++) {
            held += counts[s] * found.value()[s];
        }
        boolean ruledOut = held < worth * (1 - 1e-7);
        if (ruledOut) {
            purchases.add(tried, found.value());
        }
        boolean added = false;
        for (PriceList.Column column : found.columns()) {
            double gain = Math.min(0, y[rowOfStock[column.stock()]]);
            for (int t = 0; t < exact.length; t++) {
                gain += column.counts()[t] * exact[t];
            }
            if (gain > TOLERANCE) {
                add(column);
                added = true;
            }
        }
        if (!ruledOut && !added && !smoothed) {
            finished = true;
        }
        centre = tried;
        smoothed = added;
    }
}
