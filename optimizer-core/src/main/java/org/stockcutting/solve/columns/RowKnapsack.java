package org.stockcutting.solve.columns;

import java.util.List;
import java.util.TreeMap;

/** A bounded knapsack that is filled once and read for many lines. */
interface RowKnapsack {

    /**
     * Fills the table; stays short of the best where the clock or a cancel ends the task.
     *
     * @param allowed units that may be used
     * @param worth worth of each unit of the model
     * @param caps most copies of each unit of the model
     * @param lines lines it will be read for
     * @param charges one a line: a pattern worth no more than that is of no interest and may be missed
     */
    void fill(List<Integer> allowed, double[] worth, int[] caps, List<Line> lines, double[] charges);

    /** The state of most value plus leftover gain that the line can hold, or -1 if none is of interest. */
    int best(Line line, double scale);

    double value(int state);

    long size(int state);

    TreeMap<Integer, Integer> counts(int state);
}
