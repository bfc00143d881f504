package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The most worth that a stack of every class can have, for every sum of extents that it can come to. */
final class Stacks {

    private final StripShapes shapes;
    private final int[][][] below;
    private final double[][] best;
    private final int[][][] taken;
    private final int[][] top;
    /** For each class and sum the piece beyond the fence that ends the stack, -1 for none. */
    private final int[][] tall;

    /** What the pieces of a stack are worth, for given worths and most copies. */
    Stacks(StripShapes shapes) {
        this.shapes = shapes;
        int classes = shapes.classes.size();
        this.below = new int[classes][][];
        this.best = new double[classes][];
        this.taken = new int[classes][][];
        this.top = new int[classes][];
        this.tall = new int[classes][];
        for (int c = 0; c < classes; c++) {
            int[] sums = shapes.sums[c];
            List<StripShapes.Lying> lyings = shapes.classes.get(c);
            best[c] = new double[sums.length];
            top[c] = new int[sums.length];
            tall[c] = new int[sums.length];
            below[c] = new int[lyings.size()][sums.length];
            taken[c] = new int[lyings.size()][sums.length];
            for (int l = 0; l < lyings.size(); l++) {
                for (int i = 0; i < sums.length; i++) {
                    int before = sums[i] - lyings.get(l).across();
                    int at = before < 0 ? -1 : Arrays.binarySearch(sums, before);
                    below[c][l][i] = at < 0 || (!shapes.stacked && at > 0) ? -1 : at;
                }
            }
        }
    }

    /** Fills the table and returns what it cost. */
    long fill(double[] worth, int[] most) {
        long operations = 0;
        for (int c = 0; c < best.length; c++) {
            double[] value = best[c];
            Arrays.fill(value, Double.NEGATIVE_INFINITY);
            value[0] = 0;
            List<StripShapes.Lying> lyings = shapes.classes.get(c);
            for (int l = 0; l < lyings.size(); l++) {
                int type = lyings.get(l).type();
                int[] count = taken[c][l];
                Arrays.fill(count, 0);
                if (worth[type] > 0 && most[type] > 0 && !isTall(lyings.get(l))) {
                    put(value, below[c][l], count, worth[type], most[type]);
                }
                operations += value.length;
            }
            putTall(c, worth, most);
            for (int i = 1; i < value.length; i++) {
                top[c][i] = value[i] > value[top[c][i - 1]] ? i : top[c][i - 1];
            }
        }
        return operations;
    }

    private boolean isTall(StripShapes.Lying lying) {
        return lying.across() > shapes.reach;
    }

    /** One piece beyond the fence on top of all others, from above, so that what is below holds none yet. */
    private void putTall(int c, double[] worth, int[] most) {
        double[] value = best[c];
        List<StripShapes.Lying> lyings = shapes.classes.get(c);
        for (int i = value.length - 1; i > 0; i--) {
            tall[c][i] = -1;
            for (int l = 0; l < lyings.size(); l++) {
                int type = lyings.get(l).type();
                int from = below[c][l][i];
                boolean there =
                        isTall(lyings.get(l)) && from >= 0 && worth[type] > 0 && most[type] > taken(c, type, from);
                if (there && value[from] + worth[type] > value[i]) {
                    value[i] = value[from] + worth[type];
                    tall[c][i] = l;
                }
            }
        }
    }

    /** Pieces of a type in the stack of a sum, those beyond the fence aside. */
    private int taken(int c, int type, int sum) {
        int count = 0;
        int at = sum;
        List<StripShapes.Lying> lyings = shapes.classes.get(c);
        for (int l = lyings.size() - 1; l >= 0; l--) {
            for (int n = taken[c][l][at]; n > 0; n--) {
                count += lyings.get(l).type() == type ? 1 : 0;
                at = below[c][l][at];
            }
        }
        return count;
    }

    private static void put(double[] value, int[] below, int[] count, double worth, int most) {
        for (int i = 1; i < value.length; i++) {
            int from = below[i];
            if (from >= 0 && count[from] < most && value[from] + worth > value[i]) {
                value[i] = value[from] + worth;
                count[i] = count[from] + 1;
            }
        }
    }

    /** Worth of the best stack of a class in a strip of this height; 0 where there is none. */
    double worth(int c, int height) {
        int at = shapes.sumAt[c][height];
        return at < 0 ? 0 : Math.max(0, shapes.stacked ? best[c][top[c][at]] : best[c][at]);
    }

    /** The pieces of that stack. */
    List<StripShapes.Lying> pieces(int c, int height) {
        List<StripShapes.Lying> pieces = new ArrayList<>();
        int at = shapes.stacked ? top[c][shapes.sumAt[c][height]] : shapes.sumAt[c][height];
        List<StripShapes.Lying> lyings = shapes.classes.get(c);
        int last = tall[c][at];
        if (last >= 0) {
            pieces.add(lyings.get(last));
            at = below[c][last][at];
        }
        for (int l = lyings.size() - 1; l >= 0; l--) {
            for (int n = taken[c][l][at]; n > 0; n--) {
                pieces.add(lyings.get(l));
                at = below[c][l][at];
            }
        }
        return pieces;
    }
}
