package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Prices every stock for given worths, limits left out: exactly where the table is small enough, by area elsewhere. Zones count where the
 * table of all places is small enough too, else they are left out. Boards that differ only in what does not count are priced once.
 */
final class PriceList {

    /** About a tenth of a second for all boards of one round. */
    private static final double MOST_ZONE_WORK = 2e8;

    private final Model model;
    private final int[] kindOf;
    private final List<Kind> kinds = new ArrayList<>();

    /** Boards of one size, and of the same zones where these count, on which the same pieces may lie in the same way. */
    private record Kind(
            int stock,
            boolean exact,
            ExactPricing pricing,
            @Nullable ZonePricing zones) {}

    /**
     * One column: how many of each type a board of this stock gives at most.
     *
     * @param pattern how they lie, padded; null where the board is priced by area and counts may be fractional
     */
    record Column(int stock, double[] counts, @Nullable Cell pattern) {
        /** What a board gives. */
        static Column of(Board board) {
            return new Column(
                    board.stock, Arrays.stream(board.counts).asDoubleStream().toArray(), board.root);
        }

        /** What a pattern gives. */
        static Column of(int stock, Cell pattern, int types) {
            double[] counts = new double[types];
            count(pattern, counts);
            return new Column(stock, counts, pattern);
        }
    }

    /** Most worth of each stock's boards, and the columns that have it. */
    record Prices(double[] value, List<Column> columns) {}

    PriceList(Model model) {
        this.model = model;
        this.kindOf = new int[model.stocks];
        Map<String, Integer> known = new HashMap<>();
        boolean[] withZones = withZones(model);
        double work = 0;
        for (int s = 0; s < model.stocks; s++) {
            String key = withZones[s] ? key(s) + model.stock(s).zones() : key(s);
            Integer kind = known.get(key);
            if (kind == null) {
                kind = kinds.size();
                known.put(key, kind);
                // All tables of one round together stay as small as one may be.
                double more = ExactPricing.work(model, s);
                boolean exact = work + more <= ExactPricing.MOST_WORK;
                work += exact ? more : 0;
                boolean zoned = withZones[s];
                kinds.add(new Kind(s, exact, new ExactPricing(model, s), zoned ? new ZonePricing(model, s) : null));
            }
            kindOf[s] = kind;
        }
    }

    /** Boards on which zones count: the cheapest to price first, as long as all of one round stay small. */
    private static boolean[] withZones(Model model) {
        boolean[] counted = new boolean[model.stocks];
        double[] work = new double[model.stocks];
        List<Integer> order = new ArrayList<>();
        for (int s = 0; s < counted.length; s++) {
            if (model.hasZones(s)) {
                work[s] = ZonePricing.work(model, s);
                order.add(s);
            }
        }
        order.sort(Comparator.comparingDouble(s -> work[s]));
        double all = 0;
        for (int s : order) {
            all += work[s];
            counted[s] = all <= MOST_ZONE_WORK;
        }
        return counted;
    }

    private String key(int s) {
        StringBuilder key = new StringBuilder();
        key.append(model.stock(s).length()).append('x').append(model.stock(s).width());
        for (int t = 0; t < model.types; t++) {
            key.append(model.allows(s, t, false) ? 's' : '-').append(model.allows(s, t, true) ? 't' : '-');
        }
        return key.toString();
    }

    Prices price(double[] worth, WorkMeter meter) {
        Column[] best = new Column[kinds.size()];
        double[] most = new double[kinds.size()];
        for (int k = 0; k < best.length; k++) {
            Kind kind = kinds.get(k);
            if (kind.zones() != null) {
                ExactPricing.Priced priced = kind.zones().price(worth);
                most[k] = priced.value();
                best[k] = Column.of(kind.stock(), priced.pattern(), model.types);
                meter.spend(Weights.of((long) kind.zones().work()));
            } else if (kind.exact()) {
                ExactPricing.Priced priced = kind.pricing().price(worth);
                most[k] = priced.value();
                best[k] = Column.of(kind.stock(), priced.pattern(), model.types);
                meter.spend(Weights.of(kind.pricing().takeOperations()));
            } else {
                best[k] = byArea(kind.stock(), worth);
                most[k] = worth(best[k], worth);
                meter.spend(Weights.of(10L * worth.length));
            }
        }
        double[] value = new double[model.stocks];
        List<Column> columns = new ArrayList<>();
        for (int s = 0; s < value.length; s++) {
            value[s] = most[kindOf[s]];
            columns.add(new Column(s, best[kindOf[s]].counts(), best[kindOf[s]].pattern()));
        }
        return new Prices(value, columns);
    }

    private static double worth(Column column, double[] worth) {
        double sum = 0;
        for (int t = 0; t < worth.length; t++) {
            sum += column.counts()[t] * worth[t];
        }
        return sum;
    }

    private static void count(Cell cell, double[] counts) {
        if (cell.isPiece()) {
            counts[cell.type()]++;
        }
        for (Cell part : cell.parts) {
            count(part, counts);
        }
    }

    /** The whole board full of the type that is worth most by area. */
    private Column byArea(int s, double[] worth) {
        double[] counts = new double[model.types];
        int best = -1;
        double most = 0;
        for (int t = 0; t < model.types; t++) {
            double filled = model.hasPlace(s, t) ? worth[t] * model.boardArea(s) / leastArea(s, t) : 0;
            if (filled > most) {
                most = filled;
                best = t;
            }
        }
        if (best >= 0) {
            counts[best] = model.boardArea(s) / leastArea(s, best);
        }
        return new Column(s, counts, null);
    }

    private double leastArea(int s, int t) {
        double straight = (double) model.length(s, t, false) * model.width(s, t, false);
        double turned = (double) model.length(s, t, true) * model.width(s, t, true);
        if (!model.allows(s, t, true)) {
            return straight;
        }
        return model.allows(s, t, false) ? Math.min(straight, turned) : turned;
    }

    /** Least cost at which worths stay without gain: the factor that brings the dearest board without limit down to its cost. */
    double factor(Prices prices) {
        double factor = 1;
        for (int s = 0; s < model.stocks; s++) {
            if (!model.isLimited(s) && prices.value()[s] > model.stock(s).cost()) {
                factor = Math.min(factor, model.stock(s).cost() / prices.value()[s]);
            }
        }
        return factor;
    }

    /** What demand is worth less what limited boards gain, after scaling by {@link #factor} (Farley, Operations Research 38, 1990). */
    double bound(double[] worth, int[] demand, Prices prices) {
        double factor = factor(prices);
        double sum = 0;
        for (int t = 0; t < worth.length; t++) {
            sum += factor * worth[t] * demand[t];
        }
        for (int s = 0; s < model.stocks; s++) {
            StockType stock = model.stock(s);
            if (model.isLimited(s)) {
                sum -= stock.copies() * Math.max(0, factor * prices.value()[s] - stock.cost());
            }
        }
        return sum;
    }

    static boolean isEmpty(Column column) {
        return Arrays.stream(column.counts()).allMatch(c -> c == 0);
    }
}
