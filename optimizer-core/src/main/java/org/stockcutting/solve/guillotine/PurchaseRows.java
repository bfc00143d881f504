package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How many boards of each stock may be bought for a plan of all pieces: what no row rules out. A row says for some worths of pieces that
 * the boards, each worth so much at most, must be worth as much as all pieces. With a few boards of several sizes, whole numbers leave
 * large gaps between the costs of what is left, which the linear programme over fractions of boards does not see.
 */
final class PurchaseRows {

    private static final int MOST_KINDS = 4;
    /** PurchaseRows that are looked through each time. */
    private static final double MOST_TRIED = 20_000;

    private static final double SAFE = 1e-9;
    /** Share of the worth to spare below which a plan of whole boards is hardly to be hoped for. */
    private static final double LEAST_SLACK = 0.003;

    private final Model model;
    private final int[] demand;
    private final List<Integer> kinds = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();

    /**
     * What boards must be worth together.
     *
     * @param worth of one piece of each type
     * @param most what one board of each stock is worth at most
     * @param need what all pieces are worth
     */
    record Row(double[] worth, double[] most, double need) {

        /** How much more than needed the boards are worth, as a share; below 0 where they do not suffice. */
        double slack(int[] counts) {
            double sum = 0;
            for (int s = 0; s < counts.length; s++) {
                sum += counts[s] * most[s];
            }
            return sum / need - 1;
        }
    }

    /** @param demand pieces that are placed, by type */
    PurchaseRows(Model model, int[] demand) {
        this.model = model;
        this.demand = demand.clone();
        for (int s = 0; s < model.stocks; s++) {
            if (model.stock(s).cost() > 0) {
                kinds.add(s);
            }
        }
        double[] areas = new double[model.types];
        Arrays.setAll(areas, model::area);
        double[] most = new double[model.stocks];
        Arrays.setAll(most, model::boardArea);
        add(areas, most);
    }

    /** True if whole numbers of clear boards say more than a multiple of one price, and there are not too many to try. */
    static boolean suits(Model model, long cost) {
        double tried = 1;
        int kinds = 0;
        for (int s = 0; s < model.stocks; s++) {
            long price = model.stock(s).cost();
            if (model.hasZones(s)) {
                return false;
            }
            if (price > 0) {
                kinds++;
                tried *= 1 + (double) cost / price;
            } else if (!model.isLimited(s)) {
                return false;
            }
        }
        return kinds > 1 && kinds <= MOST_KINDS && tried <= MOST_TRIED && !model.paysOffcuts;
    }

    /** Worths of pieces, and what a board of each stock is worth at most under them. */
    void add(double[] worth, double[] most) {
        double need = 0;
        for (int t = 0; t < worth.length; t++) {
            need += worth[t] * demand[t];
        }
        if (need > 0) {
            rows.add(new Row(worth.clone(), most.clone(), need));
        }
    }

    /** Takes this row in place of the one given so before. */
    void setFirst(double[] worth, double[] most) {
        if (rows.size() > 1) {
            rows.remove(1);
        }
        List<Row> later = new ArrayList<>(rows.subList(1, rows.size()));
        rows.subList(1, rows.size()).clear();
        add(worth, most);
        rows.addAll(later);
    }

    /** The cheapest purchase that is not ruled out and costs no more than this; null where there is none. */
    int @Nullable [] least(long cost) {
        return least(cost, rows);
    }

    private int @Nullable [] least(long cost, List<Row> by) {
        int[] best = null;
        long least = Long.MAX_VALUE;
        for (int[] counts : all(cost)) {
            if (cost(counts) < least && slack(counts, by) >= 0) {
                least = cost(counts);
                best = counts;
            }
        }
        return best;
    }

    /** Nothing costs less than this; no more than the given cost, at which a plan is known. */
    long bound(long known) {
        int[] least = least(known - 1);
        return least == null ? known : cost(least);
    }

    /** What it costs. */
    long cost(int[] counts) {
        long cost = 0;
        for (int s : kinds) {
            cost += counts[s] * model.stock(s).cost();
        }
        return cost;
    }

    /** Of {@link Purchases#within} those that are not ruled out, those with most to spare first, without those with next to nothing. */
    List<int[]> within(long cost) {
        List<int[]> within = new ArrayList<>();
        for (int[] counts : Purchases.within(model, cost)) {
            if (slack(counts, rows) >= 0) {
                within.add(counts);
            }
        }
        within.sort((a, b) -> Double.compare(slack(b, rows), slack(a, rows)));
        int promising = within.size();
        while (promising > 1 && slack(within.get(promising - 1), rows) < LEAST_SLACK) {
            promising--;
        }
        return within.subList(0, promising);
    }

    private static double slack(int[] counts, List<Row> rows) {
        double least = Double.POSITIVE_INFINITY;
        for (Row row : rows) {
            least = Math.min(least, row.slack(counts) + SAFE);
        }
        return least;
    }

    private int copies(int s) {
        return model.isLimited(s) ? model.stock(s).copies() : Integer.MAX_VALUE;
    }

    private List<int[]> all(long cost) {
        int[] free = new int[model.stocks];
        for (int s = 0; s < free.length; s++) {
            free[s] = model.stock(s).cost() > 0 ? 0 : model.stock(s).copies();
        }
        List<int[]> all = new ArrayList<>();
        addAll(free, 0, cost, all);
        return all;
    }

    private void addAll(int[] counts, int kind, long cost, List<int[]> all) {
        if (kind == kinds.size()) {
            all.add(counts.clone());
            return;
        }
        int s = kinds.get(kind);
        long price = model.stock(s).cost();
        for (int n = 0; n <= copies(s) && n * price <= cost; n++) {
            counts[s] = n;
            addAll(counts, kind + 1, cost - n * price, all);
        }
        counts[s] = 0;
    }

    /** Worths of the rows that it takes, besides the first given, to rule out all purchases cheaper than the least within this cost. */
    List<List<Double>> needed(long cost) {
        int[] best = least(cost);
        long bound = best == null ? cost : cost(best) - 1;
        List<Row> kept = new ArrayList<>(rows);
        for (Row row : rows) {
            List<Row> fewer = new ArrayList<>(kept);
            fewer.remove(row);
            boolean isFirst = rows.size() > 1 && row == rows.get(1);
            if (!isFirst && least(bound, fewer) == null) {
                kept = fewer;
            }
        }
        if (rows.size() > 1) {
            kept.remove(rows.get(1));
        }
        return kept.stream()
                .map(row -> Arrays.stream(row.worth()).boxed().toList())
                .toList();
    }
}
