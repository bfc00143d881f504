package org.stockcutting.solve.lp;

import java.util.Arrays;
import java.util.function.LongPredicate;

/**
 * Minimises c x over x at least 0 where every row is either "at least" its right-hand side, a shortfall being allowed at a penalty, or
 * "at most" its right-hand side. The right-hand sides of the latter are never negative, so there always is a solution: nothing at all,
 * every shortfall paid for.
 *
 * <p>Keeps its basis: after new columns or costs the primal method goes on, after new right-hand sides the dual method does (Dantzig
 * 1963; Lemke 1954). Ties are broken by column number and, after a run of degenerate steps, by Bland's rule (1977), so the method ends
 * and always takes the same path.
 */
public final class RevisedSimplex {

    private static final double PIVOT = 1e-9;
    private static final double FEASIBLE = 1e-9;
    /** Degenerate steps in a row before Bland's rule takes over. */
    private static final int PATIENCE = 2_000;

    private final int size;
    private final boolean[] atLeast;
    private final double[] rhs;
    private final Columns columns = new Columns();
    private final int first;
    private final DenseInverse inverse;
    private final LongPredicate spend;
    private final double optimal;
    private final int[] basis;
    private int[] placeOf = new int[64];
    private final double[] x;
    private final double[] y;
    private final double[] image;
    private final int[] surplus;
    private int sinceRebuild;

    /**
     * @param atLeast sense of each row
     * @param rhs right-hand sides, at least 0 for "at most" rows
     * @param penalties cost of one unit of shortfall of each "at least" row; ignored for the others
     * @param tolerance how far below zero a reduced cost must be before its column counts as improving
     * @param spend takes elementary operations, answers false when the work is to stop
     */
    public RevisedSimplex(boolean[] atLeast, double[] rhs, double[] penalties, double tolerance, LongPredicate spend) {
        this.size = rhs.length;
        this.atLeast = atLeast.clone();
        this.rhs = rhs.clone();
        this.spend = spend;
        this.optimal = tolerance;
        this.inverse = new DenseInverse(size);
        this.basis = new int[size];
        this.x = new double[size];
        this.y = new double[size];
        this.image = new double[size];
        this.surplus = new int[size];
        for (int i = 0; i < size; i++) {
            add(atLeast[i] ? penalties[i] : 0, new int[] {i}, new double[] {1});
        }
        for (int i = 0; i < size; i++) {
            if (atLeast[i]) {
                surplus[i] = add(0, new int[] {i}, new double[] {-1});
            }
        }
        this.first = columns.size();
        reset();
    }

    /** Adds a column and returns its number among the added ones, counted from 0. */
    public int addColumn(double cost, int[] rows, double[] values) {
        return add(cost, rows, values) - first;
    }

    private int add(double cost, int[] rows, double[] values) {
        int number = columns.add(cost, rows, values);
        if (number == placeOf.length) {
            placeOf = Arrays.copyOf(placeOf, 2 * number);
        }
        placeOf[number] = -1;
        return number;
    }

    public int columnCount() {
        return columns.size() - first;
    }

    /** Changes a cost; takes effect with the next {@link #minimise}. */
    public void setCost(int column, double cost) {
        columns.setCost(first + column, cost);
    }

    /** Changes a right-hand side; takes effect with the next {@link #minimise}. */
    public void setRightHandSide(int row, double value) {
        rhs[row] = value;
    }

    /** What the basis is, to come back to it later. */
    public int[] basis() {
        return basis.clone();
    }

    /** Goes back to a basis taken earlier. */
    public void restore(int[] earlier) {
        for (int b : basis) {
            placeOf[b] = -1;
        }
        System.arraycopy(earlier, 0, basis, 0, size);
        rebuild();
    }

    /**
     * Goes on to the optimum, or to where rounding errors keep it from getting further: values and duals are proposals, not proofs.
     *
     * @return false if the work was stopped before
     */
    public boolean minimise() {
        recompute();
        boolean going = true;
        if (isInfeasible()) {
            going = dual();
            if (going && isInfeasible()) {
                reset();
            }
        }
        return going && primal();
    }

    private boolean primal() {
        int degenerate = 0;
        // With rounding errors no rule of choice keeps it from going round for ever; what it has by then is a basis
        // like any other.
        int limit = 5_000 + 20 * (size + columns.size());
        for (int step = 0; step < limit; step++) {
            int entering = entering(degenerate > PATIENCE);
            if (entering < 0) {
                return true;
            }
            inverse.times(columns.rows(entering), columns.values(entering), image);
            int leaving = leaving(degenerate > PATIENCE);
            if (leaving < 0) {
                return true;
            }
            degenerate = x[leaving] / image[leaving] > FEASIBLE ? 0 : degenerate + 1;
            pivot(leaving, entering);
            if (!spend.test(inverse.takeOperations() + columns.size() * 4L)) {
                return false;
            }
        }
        return true;
    }

    private int entering(boolean bland) {
        int best = -1;
        double least = -optimal;
        for (int j = 0; j < columns.size(); j++) {
            if (placeOf[j] < 0) {
                double reduced = columns.cost(j) - columns.dot(j, y);
                if (reduced < least) {
                    best = j;
                    least = reduced;
                    if (bland) {
                        return j;
                    }
                }
            }
        }
        return best;
    }

    private int leaving(boolean bland) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            if (image[i] > PIVOT) {
                double ratio = Math.max(0, x[i]) / image[i];
                boolean tie = best >= 0 && Math.abs(ratio - least) <= 1e-12;
                boolean better = tie ? (bland ? basis[i] < basis[best] : image[i] > image[best]) : ratio < least;
                if (better) {
                    best = i;
                    least = tie ? Math.min(ratio, least) : ratio;
                }
            }
        }
        return best;
    }

    private boolean dual() {
        int limit = 200 + 20 * size;
        for (int step = 0; step < limit; step++) {
            int leaving = mostNegative();
            if (leaving < 0) {
                return true;
            }
            int entering = dualEntering(inverse.row(leaving));
            if (entering < 0) {
                return true;
            }
            inverse.times(columns.rows(entering), columns.values(entering), image);
            if (Math.abs(image[leaving]) < PIVOT) {
                return true;
            }
            pivot(leaving, entering);
            if (!spend.test(inverse.takeOperations() + columns.size() * 8L)) {
                return false;
            }
        }
        return true;
    }

    private int mostNegative() {
        int worst = -1;
        for (int i = 0; i < size; i++) {
            if (x[i] < -FEASIBLE && (worst < 0 || x[i] < x[worst])) {
                worst = i;
            }
        }
        return worst;
    }

    private int dualEntering(double[] row) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        double pivot = 0;
        for (int j = 0; j < columns.size(); j++) {
            if (placeOf[j] < 0) {
                double a = -columns.dot(j, row);
                if (a > 1e-8) {
                    double ratio = Math.max(0, columns.cost(j) - columns.dot(j, y)) / a;
                    if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && a > pivot)) {
                        best = j;
                        least = Math.min(least, ratio);
                        pivot = a;
                    }
                }
            }
        }
        return best;
    }

    private void pivot(int leaving, int entering) {
        double reduced = columns.cost(entering) - columns.dot(entering, y);
        double step = x[leaving] / image[leaving];
        for (int i = 0; i < size; i++) {
            x[i] -= step * image[i];
        }
        x[leaving] = step;
        placeOf[basis[leaving]] = -1;
        basis[leaving] = entering;
        placeOf[entering] = leaving;
        inverse.replace(leaving, image);
        double[] row = inverse.row(leaving);
        for (int k = 0; k < size; k++) {
            y[k] += reduced * row[k];
        }
        if (++sinceRebuild >= Math.max(100, 2 * size)) {
            rebuild();
        }
    }

    private void rebuild() {
        sinceRebuild = 0;
        if (!inverse.rebuild(basis, columns)) {
            reset();
            return;
        }
        for (int i = 0; i < size; i++) {
            placeOf[basis[i]] = i;
        }
        recompute();
    }

    /** Back to the start: every shortfall paid for, every "at most" row slack. */
    private void reset() {
        Arrays.fill(placeOf, -1);
        for (int i = 0; i < size; i++) {
            basis[i] = rhs[i] < 0 && atLeast[i] ? surplus[i] : i;
            placeOf[basis[i]] = i;
        }
        inverse.setIdentity();
        for (int i = 0; i < size; i++) {
            inverse.row(i)[i] = basis[i] == i ? 1 : -1;
        }
        sinceRebuild = 0;
        recompute();
    }

    private void recompute() {
        inverse.times(rhs, x);
        Arrays.fill(y, 0);
        for (int i = 0; i < size; i++) {
            double cost = columns.cost(basis[i]);
            if (cost != 0) {
                double[] row = inverse.row(i);
                for (int k = 0; k < size; k++) {
                    y[k] += cost * row[k];
                }
            }
        }
    }

    private boolean isInfeasible() {
        return mostNegative() >= 0;
    }

    /** Value of the current basis. */
    public double objective() {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += columns.cost(basis[i]) * Math.max(0, x[i]);
        }
        return sum;
    }

    /** Value of an added column. */
    public double value(int column) {
        int place = placeOf[first + column];
        return place < 0 ? 0 : Math.max(0, x[place]);
    }

    /** Shortfall of an "at least" row. */
    public double shortfall(int row) {
        return atLeast[row] && placeOf[row] >= 0 ? Math.max(0, x[placeOf[row]]) : 0;
    }

    /** Duals: at least 0 for "at least" rows, at most 0 for the others, up to rounding. */
    public double[] duals() {
        return y.clone();
    }
}
