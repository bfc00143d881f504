package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The best strip of each height: a knapsack of stacks along it (Gilmore, Gomory, Operations Research 13, 1965). */
final class StripFilling {

    /** Where pieces of a type lie both ways in one strip, more of them may be taken than there are: so often one way is left out. */
    private static final int MOST_RETRIES = 4;

    private final StripShapes shapes;
    private final Stacks stacks;
    private final Points places;
    private final int[][] before;
    private final double[] worth;
    private final List<int[]> counts = new ArrayList<>();
    private final double[] value;
    private int[] left = new int[0];
    private boolean capped;
    private long operations;

    /**
     * A filled strip.
     *
     * @param height index of its height
     * @param counts pieces of each type
     */
    record Strip(int height, double worth, int[] counts, Cell cell) {}

    /** One kind of stack in a strip, at most so often. */
    private record Choice(int stack, double worth, int most) {}

    StripFilling(StripShapes shapes) {
        this.shapes = shapes;
        this.stacks = new Stacks(shapes);
        int classes = shapes.classes.size();
        this.places = shapes.alongPlaces;
        this.before = new int[classes][places.count()];
        for (int c = 0; c < classes; c++) {
            for (int p = 0; p < places.count(); p++) {
                int rest = places.at[p] - shapes.length(c);
                before[c][p] = rest < 0 ? -1 : places.before(rest);
            }
        }
        this.worth = new double[shapes.model.types];
        this.value = new double[places.count()];
    }

    /** Operations of one strip, roughly. */
    double work() {
        return (double) places.count() * Math.min(before.length, 20);
    }

    /** From now on pieces are worth this, and no strip needs to respect how many there are. */
    void set(double[] worths) {
        System.arraycopy(worths, 0, worth, 0, worth.length);
        capped = false;
        int[] most = new int[worth.length];
        Arrays.fill(most, Integer.MAX_VALUE);
        operations += stacks.fill(worth, most);
    }

    /** From now on pieces are worth this, and there are so many left of each type. */
    void set(double[] worths, int[] most) {
        System.arraycopy(worths, 0, worth, 0, worth.length);
        capped = true;
        left = most.clone();
        operations += stacks.fill(worth, left);
    }

    /**
     * No strip of this height is worth more: the best stack as often as it goes in, the second best by length in what is left (Martello,
     * Toth, Knapsack Problems, 1990, section 3.6).
     */
    double most(int height) {
        double first = 0;
        double second = 0;
        int best = -1;
        for (int c = 0; c < before.length; c++) {
            double each = stacks.worth(c, height) / shapes.length(c);
            if (each > first) {
                second = first;
                first = each;
                best = c;
            } else if (each > second) {
                second = each;
            }
        }
        operations += 2L * before.length;
        if (best < 0) {
            return 0;
        }
        int times = shapes.along / shapes.length(best);
        int rest = shapes.along - times * shapes.length(best);
        // A hair for what rounding may have lost.
        return (1 + 1e-12) * (times * stacks.worth(best, height) + rest * second);
    }

    /** The best strip of this height; where there are only so many pieces left, a good one. */
    Strip fill(int height) {
        boolean[] banned = new boolean[before.length];
        int[] stackCounts = chosen(height, banned);
        for (int n = 0; capped && n < MOST_RETRIES; n++) {
            int worst = worstOveruse(height, stackCounts);
            if (worst < 0) {
                break;
            }
            banned[worst] = true;
            stackCounts = chosen(height, banned);
        }
        return strip(height, stackCounts);
    }

    /** How often each class is taken. */
    private int[] chosen(int height, boolean[] banned) {
        List<Choice> choices = choices(height, banned);
        Arrays.fill(value, 0);
        for (int k = 0; k < choices.size(); k++) {
            if (k == counts.size()) {
                counts.add(new int[value.length]);
            }
            put(choices.get(k), counts.get(k));
        }
        operations += 2L * value.length * choices.size();
        int[] taken = new int[before.length];
        int at = value.length - 1;
        for (int k = choices.size() - 1; k >= 0; k--) {
            int stack = choices.get(k).stack();
            for (int n = counts.get(k)[at]; n > 0; n--) {
                taken[stack]++;
                at = before[stack][at];
            }
        }
        return taken;
    }

    private void put(Choice choice, int[] count) {
        int[] from = before[choice.stack()];
        double gain = choice.worth();
        for (int p = 0; p < value.length; p++) {
            int q = from[p];
            count[p] = 0;
            if (q >= 0 && count[q] < choice.most() && value[q] + gain > value[p]) {
                value[p] = value[q] + gain;
                count[p] = count[q] + 1;
            }
        }
    }

    /** Stacks that no others of the same or less length, as many as the strip takes, make useless. */
    private List<Choice> choices(int height, boolean[] banned) {
        List<Choice> choices = new ArrayList<>();
        for (int c = 0; c < before.length; c++) {
            double each = stacks.worth(c, height);
            if (each > 0 && !banned[c] && !isDominated(each, choices)) {
                choices.add(new Choice(c, each, capped ? copies(c, height) : Integer.MAX_VALUE));
            }
        }
        operations += before.length + (long) choices.size() * choices.size() / 2;
        return choices;
    }

    private boolean isDominated(double each, List<Choice> shorter) {
        long room = 0;
        for (Choice choice : shorter) {
            if (choice.worth() >= each) {
                room += choice.most() == Integer.MAX_VALUE
                        ? shapes.along
                        : (long) choice.most() * shapes.length(choice.stack());
            }
        }
        return room >= shapes.along;
    }

    private int copies(int c, int height) {
        int[] needed = new int[worth.length];
        int copies = Integer.MAX_VALUE;
        for (StripShapes.Lying piece : stacks.pieces(c, height)) {
            needed[piece.type()]++;
            copies = Math.min(copies, left[piece.type()] / needed[piece.type()]);
        }
        return Math.max(1, copies);
    }

    /** Of the stacks that hold a piece too many the one that is worth least by length, -1 where no piece is. */
    private int worstOveruse(int height, int[] stackCounts) {
        int[] all = new int[worth.length];
        for (int c = 0; c < stackCounts.length; c++) {
            if (stackCounts[c] > 0) {
                for (StripShapes.Lying piece : stacks.pieces(c, height)) {
                    all[piece.type()] += stackCounts[c];
                }
            }
        }
        int worst = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int c = 0; c < stackCounts.length; c++) {
            double each = stacks.worth(c, height) / shapes.length(c);
            if (stackCounts[c] > 0
                    && each < least
                    && stacks.pieces(c, height).stream().anyMatch(p -> all[p.type()] > left[p.type()])) {
                worst = c;
                least = each;
            }
        }
        return worst;
    }

    private Strip strip(int height, int[] stackCounts) {
        int high = shapes.heights[height];
        int[] all = new int[worth.length];
        double sum = 0;
        List<Cell> columns = new ArrayList<>();
        int used = 0;
        for (int c = 0; c < stackCounts.length; c++) {
            for (int n = 0; n < stackCounts[c]; n++) {
                List<Cell> pieces = new ArrayList<>();
                int stacked = 0;
                for (StripShapes.Lying lying : stacks.pieces(c, height)) {
                    if (!capped || all[lying.type()] < left[lying.type()]) {
                        all[lying.type()]++;
                        sum += worth[lying.type()];
                        pieces.add(shapes.piece(lying));
                        stacked += lying.across();
                    }
                }
                if (!pieces.isEmpty()) {
                    columns.add(shapes.join(true, high, shapes.length(c), pieces, stacked));
                    used += shapes.length(c);
                }
            }
        }
        operations += 20L * columns.size();
        return new Strip(height, sum, all, shapes.join(false, high, shapes.along, columns, used));
    }

    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
