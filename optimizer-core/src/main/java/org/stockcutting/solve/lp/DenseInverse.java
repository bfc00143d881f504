package org.stockcutting.solve.lp;

import java.util.Arrays;

/**
 * The explicit inverse of the basis matrix, updated by elementary row operations (the product form applied at once) and rebuilt from
 * scratch by Gauss-Jordan elimination with partial pivoting (Dantzig, Linear Programming and Extensions, 1963).
 */
final class DenseInverse {

    private static final double DROP = 1e-13;

    private final int size;
    private final double[][] rows;
    private final int[] filled;
    private long operations;

    DenseInverse(int size) {
        this.size = size;
        this.rows = new double[size][size];
        this.filled = new int[size];
        setIdentity();
    }

    void setIdentity() {
        for (int i = 0; i < size; i++) {
            Arrays.fill(rows[i], 0);
            rows[i][i] = 1;
        }
    }

    double[] row(int i) {
        return rows[i];
    }

    /** Inverse times a sparse column. */
    void times(int[] index, double[] value, double[] result) {
        for (int i = 0; i < size; i++) {
            double[] row = rows[i];
            double sum = 0;
            for (int k = 0; k < index.length; k++) {
                sum += row[index[k]] * value[k];
            }
            result[i] = sum;
        }
        operations += (long) size * index.length;
    }

    /** Inverse times a full vector. */
    void times(double[] vector, double[] result) {
        for (int i = 0; i < size; i++) {
            double[] row = rows[i];
            double sum = 0;
            for (int k = 0; k < size; k++) {
                sum += row[k] * vector[k];
            }
            result[i] = sum;
        }
        operations += (long) size * size;
    }

    /** The column whose image is {@code image} replaces the basic column of row {@code pivot}. */
    void replace(int pivot, double[] image) {
        double[] pivotRow = rows[pivot];
        double factor = 1 / image[pivot];
        int count = 0;
        for (int k = 0; k < size; k++) {
            double v = pivotRow[k];
            if (v != 0) {
                v *= factor;
                if (Math.abs(v) < DROP) {
                    v = 0;
                } else {
                    filled[count++] = k;
                }
                pivotRow[k] = v;
            }
        }
        for (int i = 0; i < size; i++) {
            double a = image[i];
            if (i != pivot && a != 0) {
                subtract(rows[i], pivotRow, a, count);
                operations += count;
            }
        }
        operations += size;
    }

    private void subtract(double[] row, double[] pivotRow, double a, int count) {
        if (count == size) {
            for (int k = 0; k < size; k++) {
                row[k] -= a * pivotRow[k];
            }
            return;
        }
        for (int f = 0; f < count; f++) {
            int k = filled[f];
            row[k] -= a * pivotRow[k];
        }
    }

    /**
     * Inverts afresh. The columns are permuted so that basic column i belongs to row i afterwards.
     *
     * @param basis column numbers; reordered in place
     * @return false if the columns are dependent; the inverse is useless then
     */
    boolean rebuild(int[] basis, Columns columns) {
        setIdentity();
        int[] wanted = basis.clone();
        // Logical columns first: they fill nothing in.
        Integer[] order = new Integer[size];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Integer.compare(columns.count(wanted[a]), columns.count(wanted[b])));
        boolean[] used = new boolean[size];
        double[] image = new double[size];
        for (Integer place : order) {
            int column = wanted[place];
            times(columns.rows(column), columns.values(column), image);
            int best = -1;
            for (int i = 0; i < size; i++) {
                if (!used[i] && (best < 0 || Math.abs(image[i]) > Math.abs(image[best]))) {
                    best = i;
                }
            }
            if (best < 0 || Math.abs(image[best]) < 1e-10) {
                return false;
            }
            used[best] = true;
            replace(best, image);
            basis[best] = column;
        }
        return true;
    }

    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
