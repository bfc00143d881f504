package org.stockcutting.solve.lp;

import java.util.Arrays;

/** Sparse columns with their costs; numbers are given in order of arrival. */
final class Columns {

    private int[][] rows = new int[64][];
    private double[][] values = new double[64][];
    private double[] costs = new double[64];
    private int size;

    int add(double cost, int[] columnRows, double[] columnValues) {
        if (size == costs.length) {
            rows = Arrays.copyOf(rows, 2 * size);
            values = Arrays.copyOf(values, 2 * size);
            costs = Arrays.copyOf(costs, 2 * size);
        }
        rows[size] = columnRows;
        values[size] = columnValues;
        costs[size] = cost;
        return size++;
    }

    int size() {
        return size;
    }

    int count(int column) {
        return rows[column].length;
    }

    int[] rows(int column) {
        return rows[column];
    }

    double[] values(int column) {
        return values[column];
    }

    double cost(int column) {
        return costs[column];
    }

    void setCost(int column, double cost) {
        costs[column] = cost;
    }

    /** Scalar product of a column with a vector over the rows. */
    double dot(int column, double[] vector) {
        int[] index = rows[column];
        double[] value = values[column];
        double sum = 0;
        for (int k = 0; k < index.length; k++) {
            sum += value[k] * vector[index[k]];
        }
        return sum;
    }
}
