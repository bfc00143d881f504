package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.stockcutting.solve.lp.RevisedSimplex;

/**
 * The linear programme of what a dive has not fixed yet: columns that hold no more of any type than is still missing, over the boards
 * that are left. Its value is no bound, as its columns come from pricing that need not be exact.
 */
final class RestProgramme {

    /** A missing piece costs this many times the price of its area: dear enough to be avoided, not so dear that duals run wild. */
    private static final double SHORTFALL = 3;
    /** Cost of a column that holds too many of something, in dearest boards. */
    private static final double BANNED = 1e4;

    private final Model model;
    private final double scale;
    private final int[] rowOfStock;
    private final RevisedSimplex simplex;
    private final List<PriceList.Column> columns = new ArrayList<>();
    private final Set<String> known = new HashSet<>();
    private long operations;

    RestProgramme(Model model) {
        this.model = model;
        this.rowOfStock = new int[model.stocks];
        double dearest = 1;
        double price = 0;
        for (int s = 0; s < model.stocks; s++) {
            dearest = Math.max(dearest, model.stock(s).cost());
            price = Math.max(price, model.stock(s).cost() / model.boardArea(s));
        }
        this.scale = dearest;
        int rows = model.types;
        for (int s = 0; s < model.stocks; s++) {
            rowOfStock[s] = model.isLimited(s) ? rows++ : -1;
        }
        boolean[] atLeast = new boolean[rows];
        double[] penalties = new double[rows];
        for (int t = 0; t < model.types; t++) {
            atLeast[t] = true;
            penalties[t] = SHORTFALL * price * model.area(t) / scale;
        }
        this.simplex = new RevisedSimplex(atLeast, new double[rows], penalties, 1e-9, this::count);
    }

    private boolean count(long more) {
        operations += more;
        return true;
    }

    /** Adds a column that has a tree; false if it is there already. */
    boolean add(PriceList.Column column) {
        if (column.pattern() == null
                || PriceList.isEmpty(column)
                || !known.add(column.stock() + Arrays.toString(column.counts()))) {
            return false;
        }
        int[] rows = new int[model.types + 1];
        double[] values = new double[model.types + 1];
        int size = 0;
        for (int t = 0; t < model.types; t++) {
            if (column.counts()[t] > 0) {
                rows[size] = t;
                values[size++] = column.counts()[t];
            }
        }
        if (rowOfStock[column.stock()] >= 0) {
            rows[size] = rowOfStock[column.stock()];
            values[size++] = 1;
        }
        columns.add(column);
        simplex.addColumn(cost(column), Arrays.copyOf(rows, size), Arrays.copyOf(values, size));
        return true;
    }

    private double cost(PriceList.Column column) {
        return model.stock(column.stock()).cost() / scale;
    }

    /** Solves for this rest and returns the least cost, what stays missing counted by area. */
    double solve(Draft rest) {
        for (int t = 0; t < model.types; t++) {
            simplex.setRightHandSide(t, rest.left[t]);
        }
        for (int s = 0; s < model.stocks; s++) {
            if (rowOfStock[s] >= 0) {
                simplex.setRightHandSide(rowOfStock[s], rest.available(s));
            }
        }
        for (int c = 0; c < columns.size(); c++) {
            boolean usable = isWithin(columns.get(c), rest.left);
            simplex.setCost(c, usable ? cost(columns.get(c)) : BANNED);
        }
        operations += (long) columns.size() * model.types / 4;
        simplex.minimise();
        return simplex.objective() * scale;
    }

    static boolean isWithin(PriceList.Column column, int[] most) {
        for (int t = 0; t < most.length; t++) {
            if (column.counts()[t] > most[t]) {
                return false;
            }
        }
        return true;
    }

    /** Worth of one piece of each type in cost units after the last {@link #solve}. */
    double[] worths() {
        double[] y = simplex.duals();
        double[] worth = new double[model.types];
        for (int t = 0; t < worth.length; t++) {
            worth[t] = Math.max(0, y[t]) * scale;
        }
        return worth;
    }

    /** What a board of this stock must be worth more than to make the programme cheaper. */
    double charge(int stock) {
        double[] y = simplex.duals();
        return model.stock(stock).cost() + (rowOfStock[stock] < 0 ? 0 : Math.max(0, -y[rowOfStock[stock]]) * scale);
    }

    int size() {
        return columns.size();
    }

    PriceList.Column column(int c) {
        return columns.get(c);
    }

    /** How often the last solution takes a column. */
    double value(int c) {
        return simplex.value(c);
    }

    /** Operations since the last call. */
    long takeOperations() {
        long taken = operations;
        operations = 0;
        return taken;
    }
}
