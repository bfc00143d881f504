package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.stockcutting.solve.lp.RevisedSimplex;

/**
 * The restricted master: one row a unit (at least what is left, a shortfall pays a penalty by weight), one row a limited line (at most
 * the boards there are), one column a pattern.
 */
final class Master {

    /** A shortfall of the lightest unit costs this many of the dearest board. */
    private static final double PENALTY = 100;

    /**
     * Right-hand sides are moved by about this much, each by a different amount, so that the simplex method seldom stands still (Charnes
     * 1952). Rows of units that are all placed are loosened instead. Bounds are computed from the true demand.
     */
    private static final double SHIFT = 1e-7;

    private final LineModel model;
    private final RevisedSimplex simplex;
    private final Pricer pricer;
    private final int[] rowOfLine;
    private int[] left = new int[0];
    private int[] boards = new int[0];
    private final List<Pattern> patterns = new ArrayList<>();
    private final Set<String> known = new HashSet<>();
    private final Work work;
    final double scale;
    private double bound = Double.NEGATIVE_INFINITY;

    Master(LineModel model, Packing start, Work work) {
        this.model = model;
        this.work = work;
        this.scale = Math.max(
                1, model.lines.stream().mapToLong(l -> l.stock.cost()).max().orElse(1));
        this.pricer = new Pricer(model, scale, work);
        int units = model.units.size();
        rowOfLine = new int[model.lines.size()];
        int rows = units;
        for (Line line : model.lines) {
            rowOfLine[line.index] = line.isUnlimited() ? -1 : rows++;
        }
        boolean[] atLeast = new boolean[rows];
        Arrays.fill(atLeast, 0, units, true);
        double[] penalties = new double[rows];
        double lightest = model.units.stream().mapToLong(Unit::weight).min().orElse(1);
        for (int u = 0; u < units; u++) {
            penalties[u] = PENALTY * Math.min(1e4, model.units.get(u).weight() / lightest);
        }
        simplex = new RevisedSimplex(atLeast, new double[rows], penalties, 1e-9, work::spend);
        set(start.left, start.boards);
    }

    static int rows(LineModel model) {
        return model.units.size()
                + (int) model.lines.stream().filter(l -> !l.isUnlimited()).count();
    }

    RevisedSimplex simplex() {
        return simplex;
    }

    List<Pattern> patterns() {
        return patterns;
    }

    void set(int[] newLeft, int[] newBoards) {
        left = newLeft.clone();
        boards = newBoards.clone();
        for (int u = 0; u < left.length; u++) {
            double shift = SHIFT * (1 + (u * 7919L % 101) / 101.0);
            simplex.setRightHandSide(u, left[u] > 0 ? left[u] + shift : -shift);
        }
        for (int s = 0; s < boards.length; s++) {
            if (rowOfLine[s] >= 0) {
                double shift = SHIFT * (1 + (s * 104_729L % 97) / 97.0);
                simplex.setRightHandSide(rowOfLine[s], boards[s] + shift);
            }
        }
    }

    /** Adds a pattern as a column; false if it is there already. */
    boolean add(Pattern pattern) {
        if (pattern.units().length == 0 || !known.add(pattern.key())) {
            return false;
        }
        int units = pattern.units().length;
        int row = rowOfLine[pattern.line()];
        int[] rows = Arrays.copyOf(pattern.units(), row < 0 ? units : units + 1);
        double[] values = new double[rows.length];
        for (int i = 0; i < units; i++) {
            values[i] = pattern.counts()[i];
        }
        if (row >= 0) {
            rows[units] = row;
            values[units] = 1;
        }
        simplex.addColumn(pattern.cost() / scale, rows, values);
        patterns.add(pattern);
        return true;
    }

    /**
     * Column generation for the demand and boards set last.
     *
     * @param rounds most rounds of pricing
     * @param prove at the end find a bound that holds for every pattern there is
     * @return false if the work was stopped
     */
    boolean generate(int rounds, boolean prove) {
        boolean going = true;
        boolean more = true;
        for (int round = 0; round < rounds && going && more; round++) {
            going = simplex.minimise();
            double[] duals = simplex.duals();
            more = addAll(pricer.price(worth(duals), charges(duals), left, boards, false));
            going &= work.spend(1_000);
        }
        if (prove) {
            double[] duals = simplex.duals();
            bound = lagrange(worth(duals), charges(duals));
        }
        return going && (!more || simplex.minimise());
    }

    private boolean addAll(Pricer.Result result) {
        boolean added = false;
        for (Pattern pattern : result.patterns()) {
            added |= add(pattern);
        }
        return added;
    }

    /** Worth of one of each unit in scaled cost, at least 0. */
    double[] worth(double[] duals) {
        double[] worth = new double[model.units.size()];
        for (int u = 0; u < worth.length; u++) {
            worth[u] = Math.max(0, duals[u]);
        }
        return worth;
    }

    private double[] charges(double[] duals) {
        double[] charges = new double[model.lines.size()];
        for (Line line : model.lines) {
            int row = rowOfLine[line.index];
            charges[line.index] = line.stock.cost() / scale + (row < 0 ? 0 : Math.max(0, -duals[row]));
        }
        return charges;
    }

    /**
     * Lower bound from any duals: worth of the demand less what limited boards can be worth beyond their cost, after the duals are scaled
     * down until no board without limit is worth more than it costs (Farley, Operations Research 38, 1990, 922-923).
     */
    private double lagrange(double[] worth, double[] charges) {
        Pricer.Result exact = pricer.price(worth, charges, left, boards, true);
        if (!exact.complete()) {
            return Double.NEGATIVE_INFINITY;
        }
        double factor = 1;
        double sum = 0;
        int pieces = Arrays.stream(left).sum();
        boolean gains = model.lines.stream().anyMatch(l -> l.stock.offcutValue() != 0);
        for (Line line : model.lines) {
            double cost = line.stock.cost() / scale;
            double excess = exact.excess()[line.index];
            if (line.isUnlimited() && excess > 0) {
                if (gains) {
                    sum -= pieces * excess;
                } else {
                    factor = Math.min(factor, cost / (cost + excess));
                }
            }
        }
        for (int u = 0; u < left.length; u++) {
            sum += factor * worth[u] * left[u];
        }
        for (Line line : model.lines) {
            if (!line.isUnlimited()) {
                double cost = line.stock.cost() / scale;
                double value = factor * (cost + exact.excess()[line.index]);
                sum -= boards[line.index] * Math.max(0, value - cost);
            }
        }
        return sum;
    }

    /** The best bound proved by the last {@link #generate}, in cost units; negative infinity if none. */
    double bound() {
        return bound * scale;
    }

    /** Value of the linear programme over the columns there are, for the demand as it truly is. */
    double objective() {
        double[] duals = simplex.duals();
        double sum = 0;
        for (int u = 0; u < left.length; u++) {
            sum += duals[u] * left[u];
        }
        for (int s = 0; s < boards.length; s++) {
            sum += rowOfLine[s] < 0 ? 0 : duals[rowOfLine[s]] * boards[s];
        }
        return sum * scale;
    }
}
