package org.stockcutting.solve.guillotine;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * A quick bound by dual feasible functions, one along and one across (Fekete, Schepers, Mathematical Methods of Operations Research 60,
 * 2004): a piece is worth the product of its values, the smaller one where it may turn, and no board holds more than the product of the
 * wholes. It needs no linear programme, but is never above that of {@link ColumnBound}, which begins with its worths.
 *
 * <p>Extents are those of the largest stock; where no stock is largest in both directions, or none of it is unlimited, nothing is
 * tried. Every limit and zone is left out.
 */
final class ScaleBound {

    /** At most so many functions a direction; of more, every second, third and so on is tried. */
    private static final int MOST_SCALES = 240;

    private final Model model;
    private final int[] placed;
    private final boolean[] liesStraight;
    private final boolean[] liesTurned;
    private long bound;
    private double[] duals;

    /** A function with its values of all types, lying straight and turned. */
    private record Values(long whole, long[] straight, long[] turned) {

        boolean isAs(Values other) {
            return whole == other.whole
                    && Arrays.equals(straight, other.straight)
                    && Arrays.equals(turned, other.turned);
        }
    }

    /** @param placed pieces that are placed, by type */
    ScaleBound(Model model, int[] placed) {
        this.model = model;
        this.placed = placed.clone();
        this.duals = new double[model.types];
        this.liesStraight = new boolean[model.types];
        this.liesTurned = new boolean[model.types];
        for (int t = 0; t < model.types; t++) {
            for (int s = 0; s < model.stocks; s++) {
                liesStraight[t] |= model.allows(s, t, false);
                liesTurned[t] |= model.allows(s, t, true);
            }
        }
    }

    /** The least cost, a multiple of the cost unit; 0 where nothing better is known. */
    long bound() {
        return bound;
    }

    /** Worth of one piece of each type in cost units; all 0 where nothing better is known. */
    List<Double> duals() {
        return Arrays.stream(duals).boxed().toList();
    }

    /** Tries all pairs of functions. */
    void run(long costUnit, WorkMeter meter) {
        int largest = model.stocks == 0 ? -1 : largest();
        if (model.paysOffcuts || largest < 0 || model.instance.items().stream().anyMatch(i -> i.width() == 0)) {
            return;
        }
        List<Values> along = values(largest, true);
        List<Values> across = values(largest, false);
        meter.spend(Weights.of((long) along.size() * across.size() * model.types));
        double most = 0;
        Values bestAlong = along.get(0);
        Values bestAcross = across.get(0);
        for (Values x : along) {
            for (Values y : across) {
                double worth = 0;
                for (int t = 0; t < placed.length; t++) {
                    worth += (double) placed[t] * worth(t, x, y);
                }
                worth /= (double) x.whole * y.whole;
                if (worth > most * (1 + 1e-12)) {
                    most = worth;
                    bestAlong = x;
                    bestAcross = y;
                }
            }
        }
        take(bestAlong, bestAcross, costUnit);
    }

    /** The stock that is at least as long and as wide as every other; -1 if there is none. */
    private int largest() {
        int largest = 0;
        for (int s = 1; s < model.stocks; s++) {
            if (model.boardLength(s) >= model.boardLength(largest)
                    && model.boardWidth(s) >= model.boardWidth(largest)) {
                largest = s;
            }
        }
        for (int s = 0; s < model.stocks; s++) {
            if (model.boardLength(s) > model.boardLength(largest) || model.boardWidth(s) > model.boardWidth(largest)) {
                return -1;
            }
        }
        return largest;
    }

    private List<Values> values(int stock, boolean isAlong) {
        SortedSet<Long> sizes = new TreeSet<>();
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                if (placed[t] > 0 && (turned ? liesTurned : liesStraight)[t]) {
                    sizes.add(size(stock, t, turned, isAlong));
                }
            }
        }
        long extent = isAlong ? model.boardLength(stock) : model.boardWidth(stock);
        List<Values> values = new ArrayList<>();
        for (Scale scale : Scale.of(extent, sizes)) {
            long[] straight = new long[model.types];
            long[] turned = new long[model.types];
            for (int t = 0; t < model.types; t++) {
                straight[t] = liesStraight[t] ? scale.of(size(stock, t, false, isAlong)) : 0;
                turned[t] = liesTurned[t] ? scale.of(size(stock, t, true, isAlong)) : 0;
            }
            Values next = new Values(scale.whole(), straight, turned);
            if (values.stream().noneMatch(next::isAs)) {
                values.add(next);
            }
        }
        int step = (values.size() + MOST_SCALES - 1) / MOST_SCALES;
        List<Values> tried = new ArrayList<>();
        for (int i = 0; i < values.size(); i += step) {
            tried.add(values.get(i));
        }
        return tried;
    }

    private long size(int stock, int type, boolean turned, boolean isAlong) {
        return isAlong ? model.length(stock, type, turned) : model.width(stock, type, turned);
    }

    private long worth(int type, Values x, Values y) {
        long straight = x.straight[type] * y.straight[type];
        if (!liesTurned[type]) {
            return straight;
        }
        long turned = x.turned[type] * y.turned[type];
        return liesStraight[type] ? Math.min(straight, turned) : turned;
    }

    /** The price of a whole board's worth is one of the stocks' costs, and no unlimited stock may cost less. */
    private void take(Values x, Values y, long costUnit) {
        BigInteger whole = BigInteger.valueOf(x.whole).multiply(BigInteger.valueOf(y.whole));
        BigInteger worth = BigInteger.ZERO;
        for (int t = 0; t < placed.length; t++) {
            worth = worth.add(BigInteger.valueOf(placed[t]).multiply(BigInteger.valueOf(worth(t, x, y))));
        }
        long cheapest = Long.MAX_VALUE;
        for (int s = 0; s < model.stocks; s++) {
            cheapest = model.isLimited(s)
                    ? cheapest
                    : Math.min(cheapest, model.stock(s).cost());
        }
        for (int s = 0; s < model.stocks; s++) {
            long price = model.stock(s).cost();
            if (price > cheapest) {
                continue;
            }
            BigInteger value = BigInteger.valueOf(price)
                    .multiply(worth)
                    .subtract(BigInteger.valueOf(saved(price)).multiply(whole));
            BigInteger unit = whole.multiply(BigInteger.valueOf(costUnit));
            long raised = value.add(unit).subtract(BigInteger.ONE).divide(unit).longValueExact() * costUnit;
            if (raised > bound) {
                bound = raised;
                Arrays.setAll(duals, t -> (double) price * worth(t, x, y) / ((double) x.whole * y.whole));
            }
        }
    }

    /** What limited boards that cost less than this save at most. */
    private long saved(long price) {
        long saved = 0;
        for (int s = 0; s < model.stocks; s++) {
            if (model.isLimited(s)) {
                saved += model.stock(s).copies()
                        * Math.max(0, price - model.stock(s).cost());
            }
        }
        return saved;
    }
}
