package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The most that two or three stages of cuts, the first in one direction, can make of one board when pieces have given worths: a knapsack
 * of strips, each the best of its height (Gilmore, Gomory, Operations Research 13, 1965; for three stages Puchinger, Raidl, European
 * Journal of Operational Research 183, 2007). Zones are left out, and saw limits other than stages, first cut and
 * what the fence reaches.
 *
 * <p>A strip is only filled when its height is part of the best choice with every unfilled one taken at the most it could be worth: a
 * few fillings decide about some hundred heights, and the result is still the best there is.
 */
final class StripPricing {

    /** How fast {@link #share} follows. */
    private static final double LEARNING = 0.02;
    /** Where only a good pattern is asked for, strips that are not filled are taken for this much better than the last ones. */
    private static final double HOPE = 0.02;

    final StripShapes shapes;
    private final StripFilling filling;
    private final Points places;
    private final int[][] before;
    private final boolean wholeStripOnlyUncut;
    private final double[] most;
    private final StripFilling.@Nullable Strip[] filled;
    private final double[] value;
    private final int[] chosen;
    private final int[] useful;
    private int usefulCount;
    /** How much of the most that a strip could be worth the last ones were. */
    private double share = 1;

    private long operations;

    /**
     * What was found.
     *
     * @param worth no pattern is worth more; of patterns for what is left, worth of this one
     * @param root the pattern, null where it was seen before that none is worth enough
     */
    record Priced(double worth, int[] counts, @Nullable Cell root) {}

    StripPricing(StripShapes shapes) {
        this.shapes = shapes;
        this.filling = new StripFilling(shapes);
        int heights = shapes.heights.length;
        this.places = new Points(shapes.across, shapes.heights);
        this.before = new int[heights][];
        Boolean first = shapes.model.instance.limits().firstCut();
        this.wholeStripOnlyUncut = first != null;
        this.most = new double[heights];
        this.filled = new StripFilling.Strip[heights];
        this.value = new double[places.count()];
        this.chosen = new int[places.count()];
        this.useful = new int[heights];
    }

    /** Operations of one call, roughly. */
    double work() {
        return 20 * filling.work() + 20.0 * places.count() * Math.min(useful.length, 100);
    }

    /** The best pattern, copies not capped by what there is, or that none is worth more than {@code enough}. */
    Priced price(double[] worth, double enough) {
        filling.set(worth);
        List<StripFilling.Strip> strips = choose(places.count() - 1, enough, 1, true);
        double best = value[places.count() - 1];
        operations += filling.takeOperations();
        return strips == null
                ? new Priced(best, new int[worth.length], null)
                : new Priced(best, counts(strips), root(strips));
    }

    /** A good pattern of what is left: the strips of the best one as long as there are pieces for them, then those of the next best. */
    Priced price(double[] worth, int[] left, double enough) {
        int[] open = left.clone();
        for (int t = 0; t < open.length; t++) {
            open[t] = Math.min(open[t], shapes.most[t]);
        }
        List<StripFilling.Strip> taken = new ArrayList<>();
        int room = shapes.across;
        double sum = 0;
        boolean tall = true;
        while (true) {
            filling.set(worth, open);
            List<StripFilling.Strip> strips =
                    choose(places.before(room), enough - sum, Math.min(1, share + HOPE), tall);
            if (strips == null || strips.isEmpty()) {
                break;
            }
            strips.sort(Comparator.comparingDouble(s -> -s.worth() / shapes.heights[s.height()]));
            int before = taken.size();
            for (StripFilling.Strip strip : strips) {
                if (isThere(strip, open)) {
                    take(strip, open);
                    taken.add(strip);
                    tall &= !isTall(strip.height());
                    room -= shapes.heights[strip.height()];
                    sum += strip.worth();
                }
            }
            if (taken.size() - before == strips.size() || taken.size() == before) {
                break;
            }
        }
        operations += filling.takeOperations();
        return new Priced(sum, counts(taken), sum > enough ? root(taken) : null);
    }

    private static boolean isThere(StripFilling.Strip strip, int[] open) {
        for (int t = 0; t < open.length; t++) {
            if (strip.counts()[t] > open[t]) {
                return false;
            }
        }
        return true;
    }

    private static void take(StripFilling.Strip strip, int[] open) {
        for (int t = 0; t < open.length; t++) {
            open[t] -= strip.counts()[t];
        }
    }

    /** The best strips up to this place across, or null if they are worth no more than this. */
    private @Nullable List<StripFilling.Strip> choose(int place, double enough, double expected, boolean tall) {
        for (int j = 0; j < most.length; j++) {
            most[j] = isAllowed(j) && (tall || !isTall(j)) ? filling.most(j) * expected : 0;
            filled[j] = null;
        }
        while (true) {
            knapsack(place);
            if (value[place] <= enough) {
                return null;
            }
            List<StripFilling.Strip> strips = new ArrayList<>();
            boolean exact = true;
            int at = place;
            while (chosen[at] >= 0) {
                int j = chosen[at];
                StripFilling.Strip strip = filled[j];
                if (strip == null) {
                    exact = false;
                    strip = filling.fill(j);
                    share += LEARNING * (strip.worth() / most[j] * expected - share);
                    filled[j] = strip;
                    most[j] = strip.worth();
                }
                strips.add(strip);
                at = beforeOf(j)[at];
            }
            if (exact) {
                return strips;
            }
        }
    }

    /** The board as one strip begins with the other direction, unless it is one piece: where the first cut is prescribed, only that. */
    private boolean isAllowed(int j) {
        return (!wholeStripOnlyUncut || shapes.heights[j] < shapes.across) && shapes.isCut(shapes.heights[j]);
    }

    /** Of strips beyond the fence a board holds one. */
    private boolean isTall(int j) {
        return shapes.heights[j] > shapes.reach;
    }

    private void knapsack(int place) {
        usefulCount = 0;
        double top = 0;
        for (int j = 0; j < most.length; j++) {
            if (most[j] > top) {
                top = most[j];
                useful[usefulCount++] = j;
            }
        }
        Arrays.fill(value, 0, place + 1, 0);
        Arrays.fill(chosen, 0, place + 1, -1);
        for (int k = 0; k < usefulCount; k++) {
            int j = useful[k];
            int[] from = beforeOf(j);
            double gain = most[j];
            for (int p = isTall(j) ? place : places.behind(shapes.heights[j]); p <= place; p++) {
                if (from[p] < 0) {
                    continue;
                }
                double with = value[from[p]] + gain;
                if (with > value[p]) {
                    value[p] = with;
                    chosen[p] = j;
                }
            }
        }
        operations += (long) usefulCount * place;
    }

    private int[] beforeOf(int j) {
        int[] known = before[j];
        if (known == null) {
            known = new int[places.count()];
            for (int p = 0; p < known.length; p++) {
                int rest = places.at[p] - shapes.heights[j];
                known[p] = rest < 0 ? -1 : places.before(rest);
            }
            before[j] = known;
        }
        return known;
    }

    private int[] counts(List<StripFilling.Strip> strips) {
        int[] counts = new int[shapes.model.types];
        for (StripFilling.Strip strip : strips) {
            for (int t = 0; t < counts.length; t++) {
                counts[t] += strip.counts()[t];
            }
        }
        return counts;
    }

    private Cell root(List<StripFilling.Strip> strips) {
        List<Cell> cells = new ArrayList<>();
        int used = 0;
        for (StripFilling.Strip strip : strips) {
            cells.add(strip.cell());
            used += shapes.heights[strip.height()];
        }
        return shapes.join(true, shapes.across, shapes.along, cells, used);
    }

    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
