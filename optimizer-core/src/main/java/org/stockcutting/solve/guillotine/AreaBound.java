package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.stockcutting.solve.instance.Answer;

/**
 * Bounds by area. A piece takes at least its padded area of any board, and a board gives at most its padded area; so the least amount
 * of boards that gives the area of the placed pieces is a bound, also over whole boards. Worths of pieces follow the same way.
 */
final class AreaBound {

    /** Table of the integer bound: more amounts than this are rounded down to fewer. */
    private static final int LARGEST_TABLE = 200_000;

    private final Model model;
    private final long costUnit;

    AreaBound(Model model) {
        this.model = model;
        long unit = 0;
        for (int s = 0; s < model.stocks; s++) {
            unit = gcd(unit, model.stock(s).cost());
        }
        this.costUnit = Math.max(1, unit);
    }

    /** All costs are multiples of this. */
    long costUnit() {
        return model.paysOffcuts ? 1 : costUnit;
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /** The least cost that placing these pieces can have, {@link Answer#NO_BOUND} if nothing is known. */
    long of(int[] placed) {
        if (model.paysOffcuts) {
            return offcutBound(placed);
        }
        double area = 0;
        for (int t = 0; t < placed.length; t++) {
            area += placed[t] * model.area(t);
        }
        for (int s = 0; s < model.stocks; s++) {
            if (model.stock(s).cost() == 0) {
                if (!model.isLimited(s)) {
                    return 0;
                }
                area -= model.boardArea(s) * model.stock(s).copies();
            }
        }
        // Sums of areas below 2^53 are exact; a hair is left for larger ones.
        area *= 1 - 1e-12;
        if (area <= 0) {
            return 0;
        }
        return Math.max(continuous(area), whole(area));
    }

    /** Boards by price of area, limited ones first as far as they go; rounded up to a multiple of the cost unit. */
    private long continuous(double area) {
        double cost = 0;
        double open = area;
        for (int s : byPrice()) {
            double give = model.isLimited(s)
                    ? Math.min(open, model.boardArea(s) * model.stock(s).copies())
                    : open;
            cost += give * price(s);
            open -= give;
            if (open <= 0) {
                break;
            }
        }
        return (long) Math.ceil(cost * (1 - 1e-9) / costUnit) * costUnit;
    }

    /** All stocks, those whose area costs least first. */
    List<Integer> cheapestFirst() {
        List<Integer> stocks = new ArrayList<>();
        for (int s = 0; s < model.stocks; s++) {
            stocks.add(s);
        }
        stocks.sort((a, b) -> Double.compare(price(a), price(b)));
        return stocks;
    }

    private List<Integer> byPrice() {
        List<Integer> stocks = new ArrayList<>();
        for (int s = 0; s < model.stocks; s++) {
            if (model.stock(s).cost() > 0) {
                stocks.add(s);
            }
        }
        stocks.sort((a, b) -> Double.compare(price(a), price(b)));
        return stocks;
    }

    private double price(int s) {
        return model.stock(s).cost() / model.boardArea(s);
    }

    /** Most area for each amount of money, copies unlimited: the first amount that gives enough. */
    private long whole(double area) {
        List<Integer> stocks = byPrice();
        if (stocks.isEmpty()) {
            return 0;
        }
        long dearest =
                stocks.stream().mapToLong(s -> model.stock(s).cost()).max().orElse(0);
        double enough = (area * price(stocks.get(0)) + dearest) / costUnit + dearest / (double) costUnit;
        if (enough * stocks.size() > 20.0 * LARGEST_TABLE || enough > LARGEST_TABLE) {
            return 0;
        }
        double[] most = new double[(int) enough + 1];
        for (int c = 1; c < most.length; c++) {
            most[c] = most[c - 1];
            for (int s : stocks) {
                long before = c - model.stock(s).cost() / costUnit;
                if (before >= 0) {
                    most[c] = Math.max(most[c], most[(int) before] + model.boardArea(s));
                }
            }
            if (most[c] >= area) {
                return c * costUnit;
            }
        }
        return 0;
    }

    /** With offcuts paid for, a board costs at least what its pieces' area is worth, if it costs no less than its own area is worth. */
    private long offcutBound(int[] placed) {
        double worth = Double.POSITIVE_INFINITY;
        for (int s = 0; s < model.stocks; s++) {
            double value = model.stock(s).offcutValue();
            double raw = (double) (model.stock(s).length() + model.stock(s).rawEnd())
                    * (model.stock(s).width() + model.stock(s).rawFarEdge());
            if (model.stock(s).cost() < value * raw * (1 - 1e-12)) {
                return Answer.NO_BOUND;
            }
            worth = Math.min(worth, value);
        }
        double area = 0;
        for (int t = 0; t < placed.length; t++) {
            // As-it-comes pieces may lie on a board of no width that is known here; they count nothing.
            area += (double) placed[t] * model.item(t).length() * model.item(t).width();
        }
        return (long) Math.floor(area * worth * (1 - 1e-9));
    }

    /**
     * Worth of one piece of each type: its padded area at a price. The price is that of the cheapest unlimited stock it may lie on,
     * capped; the cap is the price of one of the stocks, chosen so that the bound, limited stock's gain taken off, is greatest.
     */
    List<Double> duals(int[] placed) {
        double[] own = new double[model.types];
        for (int t = 0; t < model.types; t++) {
            own[t] = ownPrice(t);
        }
        double best = 0;
        double bestCap = 0;
        for (int s = 0; s < model.stocks; s++) {
            double bound = bound(own, price(s), placed);
            if (bound > best) {
                best = bound;
                bestCap = price(s);
            }
        }
        Double[] duals = new Double[model.types];
        for (int t = 0; t < model.types; t++) {
            duals[t] = model.area(t) * Math.min(own[t], bestCap);
        }
        return Arrays.asList(duals);
    }

    private double ownPrice(int t) {
        double unlimited = Double.POSITIVE_INFINITY;
        double limited = 0;
        for (int s = 0; s < model.stocks; s++) {
            if (model.hasPlace(s, t)) {
                if (model.isLimited(s)) {
                    limited = Math.max(limited, price(s));
                } else {
                    unlimited = Math.min(unlimited, price(s));
                }
            }
        }
        return unlimited == Double.POSITIVE_INFINITY ? limited : unlimited;
    }

    private double bound(double[] own, double cap, int[] placed) {
        double bound = 0;
        for (int t = 0; t < model.types; t++) {
            bound += placed[t] * model.area(t) * Math.min(own[t], cap);
        }
        for (int s = 0; s < model.stocks; s++) {
            double most = 0;
            for (int t = 0; t < model.types; t++) {
                most = model.hasPlace(s, t) ? Math.max(most, Math.min(own[t], cap)) : most;
            }
            if (model.isLimited(s)) {
                bound -= model.stock(s).copies()
                        * Math.max(0, most * model.boardArea(s) - model.stock(s).cost());
            }
        }
        return bound;
    }
}
