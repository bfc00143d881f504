package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Which boards a plan within a cost may buy, where that is few: a linear programme would take fractions of boards that so much money does
 * not buy together.
 */
final class Purchases {

    /** Where there are more ways to spend the money, any fraction is as good as bought. */
    private static final int MOST_STEPS = 20_000;

    private final Model model;
    private final List<Integer> bought = new ArrayList<>();
    private final List<int[]> found = new ArrayList<>();
    private int steps;

    private Purchases(Model model) {
        this.model = model;
        for (int s = 0; s < model.stocks; s++) {
            if (model.stock(s).cost() > 0) {
                bought.add(s);
            }
        }
    }

    /**
     * Purchases to which no board can be added, those of most area first; nothing where there are too many to look at.
     *
     * @return boards of each stock; of those that cost nothing as many as there are, {@link Integer#MAX_VALUE} for any number
     */
    static List<int[]> within(Model model, long cost) {
        Purchases purchases = new Purchases(model);
        int[] counts = new int[model.stocks];
        Arrays.setAll(counts, s -> model.stock(s).cost() > 0 ? 0 : purchases.most(s));
        purchases.add(0, cost, counts);
        if (purchases.steps > MOST_STEPS) {
            return List.of();
        }
        purchases.found.sort(Comparator.comparingDouble(other -> -purchases.area(other)));
        return purchases.found;
    }

    private int most(int s) {
        return model.isLimited(s) ? model.stock(s).copies() : Integer.MAX_VALUE;
    }

    private void add(int kind, long left, int[] counts) {
        if (++steps > MOST_STEPS) {
            return;
        }
        if (kind == bought.size()) {
            if (isFull(left, counts)) {
                found.add(counts.clone());
            }
            return;
        }
        int s = bought.get(kind);
        long cost = model.stock(s).cost();
        for (int n = 0; n <= most(s) && n * cost <= left; n++) {
            counts[s] = n;
            add(kind + 1, left - n * cost, counts);
        }
        counts[s] = 0;
    }

    private boolean isFull(long left, int[] counts) {
        for (int s : bought) {
            if (counts[s] < most(s) && model.stock(s).cost() <= left) {
                return false;
            }
        }
        return true;
    }

    private double area(int[] counts) {
        double area = 0;
        for (int s : bought) {
            area += counts[s] * model.boardArea(s);
        }
        return area;
    }
}
