package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;
import org.stockcutting.solve.lp.RevisedSimplex;

/**
 * The restricted master over boards cut in strips: at least what is left of each type, at most the copies there are of each stock, one
 * column a board. Boards that hold more of a type than is left cost too much to be used.
 */
final class StripMaster {

    /** A shortfall of one piece costs this many of the dearest board. */
    private static final double PENALTY = 100;
    /** A board that holds too many pieces costs this many more. */
    private static final double UNFIT = 20;

    private static final double TOLERANCE = 1e-7;
    /** Share of the best duals so far in the next ones (Wentges, International Transactions in Operational Research 4, 1997). */
    private static final double SMOOTH = 0.8;
    /** The same where there is no bound to tell the best duals. */
    private static final double SMOOTH_LEFT = 0.7;
    /** Patterns that are tried with less and less worth for types of which they hold too many, and what such a piece takes off. */
    private static final int TRIES = 8;

    private static final double LESS = 0.02;
    /** Right-hand sides are moved apart by about this much, so that the simplex method seldom stands still (Charnes 1952). */
    private static final double SHIFT = 1e-7;

    private final Yard yard;
    private final Model model;
    private final List<StripPricing> pricings;
    private final double scale;
    private final int[] rowOfType;
    private final int[] rowOfStock;
    private final RevisedSimplex simplex;
    private final List<Board> boards = new ArrayList<>();
    private final Set<String> known = new HashSet<>();
    private final int[] left;
    private final int[] copies;
    private double bound = Double.NEGATIVE_INFINITY;
    private boolean unlimited;
    private long operations;

    StripMaster(Yard yard, List<StripPricing> pricings) {
        this.yard = yard;
        this.model = yard.model;
        this.pricings = pricings;
        this.left = new int[model.types];
        this.copies = new int[model.stocks];
        this.rowOfType = new int[model.types];
        this.rowOfStock = new int[model.stocks];
        double dearest = 1;
        int rows = 0;
        for (int t = 0; t < model.types; t++) {
            rowOfType[t] = model.hasPlace(t) ? rows++ : -1;
        }
        int types = rows;
        for (int s = 0; s < model.stocks; s++) {
            dearest = Math.max(dearest, model.stock(s).cost());
            rowOfStock[s] = model.isLimited(s) ? rows++ : -1;
        }
        this.scale = dearest;
        boolean[] atLeast = new boolean[rows];
        double[] penalties = new double[rows];
        Arrays.fill(atLeast, 0, types, true);
        Arrays.fill(penalties, 0, types, PENALTY);
        this.simplex = new RevisedSimplex(atLeast, new double[rows], penalties, 1e-9, this::count);
    }

    private boolean count(long more) {
        operations += more;
        return true;
    }

    /** Boards that are columns, by column. */
    List<Board> boards() {
        return boards;
    }

    double value(int column) {
        return simplex.value(column);
    }

    int[] basis() {
        return simplex.basis();
    }

    void restore(int[] basis) {
        simplex.restore(basis);
    }

    /** Adds a board as a column; false if one like it is there, or the saws cannot cut it. */
    boolean add(Board board) {
        String key = board.stock + Arrays.toString(board.counts);
        if (board.isEmpty() || known.contains(key) || !yard.allows(board.stock, board.root)) {
            return false;
        }
        known.add(key);
        int[] rows = new int[model.types + 1];
        double[] values = new double[model.types + 1];
        int size = 0;
        for (int t = 0; t < model.types; t++) {
            if (board.counts[t] > 0) {
                rows[size] = rowOfType[t];
                values[size++] = board.counts[t];
            }
        }
        if (rowOfStock[board.stock] >= 0) {
            rows[size] = rowOfStock[board.stock];
            values[size++] = 1;
        }
        simplex.addColumn(cost(board), Arrays.copyOf(rows, size), Arrays.copyOf(values, size));
        boards.add(board);
        return true;
    }

    private double cost(Board board) {
        boolean fits = true;
        if (unlimited) {
            return model.stock(board.stock).cost() / scale;
        }
        for (int t = 0; t < left.length; t++) {
            fits &= board.counts[t] <= Math.min(left[t], model.item(t).perBoard());
        }
        return model.stock(board.stock).cost() / scale + (fits ? 0 : UNFIT);
    }

    /**
     * Sets what is still to be cut, and from how many boards.
     *
     * @param anyBoard true if boards may hold more of a type than is left: so pricing makes them for the bound
     */
    void set(Draft draft, boolean anyBoard) {
        unlimited = anyBoard;
        System.arraycopy(draft.left, 0, left, 0, left.length);
        for (int t = 0; t < left.length; t++) {
            if (rowOfType[t] >= 0) {
                double shift = SHIFT * (1 + (t * 7919L % 101) / 101.0);
                simplex.setRightHandSide(rowOfType[t], left[t] > 0 ? left[t] + shift : -shift);
            }
        }
        for (int s = 0; s < copies.length; s++) {
            copies[s] = draft.available(s);
            if (rowOfStock[s] >= 0) {
                simplex.setRightHandSide(rowOfStock[s], copies[s] + SHIFT * (1 + (s * 104_729L % 97) / 97.0));
            }
        }
        for (int c = 0; c < boards.size(); c++) {
            simplex.setCost(c, cost(boards.get(c)));
        }
        operations += (long) boards.size() * model.types / 4;
    }

    /**
     * Column generation over all patterns, the most per board left aside as far as stacks allow it: its value is a bound.
     *
     * @param cost ends where the bound, rounded up to this step, cannot be less than this
     * @return false if the meter ended it
     */
    boolean generate(WorkMeter meter, double[] start, long cost, long step) {
        double[] centre = start.clone();
        double smooth = SMOOTH;
        while (raised(step) < cost) {
            simplex.minimise();
            double[] y = simplex.duals();
            double[] exact = worth(y);
            if (raised(lagrange(exact, y), step) <= raised(step)) {
                return true;
            }
            double[] tried = new double[exact.length];
            for (int t = 0; t < tried.length; t++) {
                tried[t] = smooth * centre[t] + (1 - smooth) * exact[t];
            }
            double[] most = new double[model.stocks];
            boolean added = false;
            for (StripPricing pricing : pricings) {
                int s = pricing.shapes.stock;
                StripPricing.Priced priced = pricing.price(tried, 0);
                most[s] = Math.max(most[s], priced.worth());
                added |= gains(priced, s, exact, y) && add(new Board(yard, s, notNull(priced)));
                operations += pricing.takeOperations();
            }
            double found = farley(tried, most);
            boolean better = found > bound + 1e-9 * Math.abs(found);
            if (better) {
                bound = found;
                centre = tried;
            }
            if (added) {
                smooth = SMOOTH;
            } else if (smooth == 0) {
                return true;
            } else {
                smooth = better && smooth > 0.5 ? smooth - 0.1 : smooth > 0.5 ? 0.5 : 0;
            }
            if (!spend(meter)) {
                return false;
            }
        }
        return true;
    }

    private static Cell notNull(StripPricing.Priced priced) {
        if (priced.root() == null) {
            throw new IllegalStateException("a pattern of worth " + priced.worth() + " has no tree");
        }
        return priced.root();
    }

    private boolean gains(StripPricing.Priced priced, int s, double[] worth, double[] y) {
        double sum = 0;
        for (int t = 0; t < worth.length; t++) {
            sum += priced.counts()[t] * worth[t];
        }
        return priced.root() != null && sum > charge(s, y) + TOLERANCE * scale;
    }

    /**
     * Column generation for what is left, over patterns of what is left.
     *
     * @param enough value at which patterns that are hard to find are no longer looked for
     * @return false if the meter ended it
     */
    boolean generate(WorkMeter meter, int rounds, double enough) {
        double[] centre = null;
        for (int n = 0; n < rounds; n++) {
            simplex.minimise();
            double[] y = simplex.duals();
            double[] exact = worth(y);
            boolean added = false;
            if (centre != null) {
                for (int t = 0; t < exact.length; t++) {
                    centre[t] = SMOOTH_LEFT * centre[t] + (1 - SMOOTH_LEFT) * exact[t];
                }
                added = priceLeft(centre, exact, y);
            }
            if (!added) {
                added = priceLeft(exact, exact, y);
                centre = exact;
            }
            if (!added && lagrange(exact, y) > enough) {
                added = priceLess(exact, y);
            }
            if (!spend(meter)) {
                return false;
            }
            if (!added) {
                break;
            }
        }
        simplex.minimise();
        return spend(meter);
    }

    /** Adds the best patterns of these worths that the programme gets cheaper with. */
    private boolean priceLeft(double[] tried, double[] exact, double[] y) {
        boolean added = false;
        for (StripPricing pricing : pricings) {
            int s = pricing.shapes.stock;
            if (copies[s] > 0) {
                double enough = tried == exact ? charge(s, y) + TOLERANCE * scale : 0;
                StripPricing.Priced priced = pricing.price(tried, left, enough);
                added |= priced.root() != null && gains(priced, s, exact, y) && add(new Board(yard, s, priced.root()));
                operations += pricing.takeOperations();
            }
        }
        return added;
    }

    /**
     * The best patterns of all mostly hold more of a type than is left, and what is cut from them without that is far from the best. So
     * such types lose worth until the best pattern is one of what is left, or a good one on the way is of use.
     */
    private boolean priceLess(double[] exact, double[] y) {
        boolean added = false;
        for (StripPricing pricing : pricings) {
            int s = pricing.shapes.stock;
            double[] tried = exact.clone();
            boolean over = copies[s] > 0;
            boolean found = false;
            for (int n = 0; n < TRIES && over && !found; n++) {
                StripPricing.Priced free = pricing.price(tried, 0);
                over = lower(tried, free.counts());
                StripPricing.Priced priced = over ? pricing.price(tried, left, 0) : free;
                found = gains(priced, s, exact, y) && add(new Board(yard, s, notNull(priced)));
                operations += pricing.takeOperations();
            }
            added |= found;
        }
        return added;
    }

    /** Makes types of which a pattern has too many worth less; false if there is none. */
    private boolean lower(double[] worth, int[] counts) {
        boolean lowered = false;
        for (int t = 0; t < worth.length; t++) {
            int over = counts[t] - Math.min(left[t], model.item(t).perBoard());
            if (over > 0) {
                worth[t] *= Math.max(0.5, 1 - LESS * over);
                lowered = true;
            }
        }
        return lowered;
    }

    private boolean spend(WorkMeter meter) {
        long more = Weights.of(operations + yard.takeOperations());
        operations = 0;
        return meter.spend(more);
    }

    /** Worth of one of each type in cost units. */
    private double[] worth(double[] y) {
        double[] worth = new double[model.types];
        for (int t = 0; t < worth.length; t++) {
            worth[t] = rowOfType[t] < 0 ? 0 : Math.max(0, y[rowOfType[t]]) * scale;
        }
        return worth;
    }

    private double charge(int s, double[] y) {
        return model.stock(s).cost() + (rowOfStock[s] < 0 ? 0 : Math.max(0, -y[rowOfStock[s]]) * scale);
    }

    /** Value of the programme as it stands. */
    double objective() {
        double[] y = simplex.duals();
        return lagrange(worth(y), y);
    }

    private double lagrange(double[] worth, double[] y) {
        double sum = 0;
        for (int t = 0; t < worth.length; t++) {
            sum += worth[t] * left[t];
        }
        for (int s = 0; s < copies.length; s++) {
            sum -= rowOfStock[s] < 0 ? 0 : Math.max(0, -y[rowOfStock[s]]) * scale * copies[s];
        }
        return sum;
    }

    /** What is left is worth less what limited boards gain, after scaling (Farley, Operations Research 38, 1990). */
    private double farley(double[] worth, double[] most) {
        double factor = 1;
        for (int s = 0; s < most.length; s++) {
            if (!model.isLimited(s) && most[s] > model.stock(s).cost()) {
                factor = Math.min(factor, model.stock(s).cost() / most[s]);
            }
        }
        double sum = 0;
        for (int t = 0; t < worth.length; t++) {
            sum += factor * worth[t] * left[t];
        }
        for (int s = 0; s < most.length; s++) {
            if (model.isLimited(s)) {
                sum -= copies[s] * Math.max(0, factor * most[s] - model.stock(s).cost());
            }
        }
        return sum;
    }

    /** The bound of the last {@link #generate(WorkMeter, double[], long, long)}, rounded up to a multiple of this; 0 for none. */
    long raised(long step) {
        return bound == Double.NEGATIVE_INFINITY ? 0 : raised(bound, step);
    }

    /** An amount rounded up to a multiple of the step, with a hair for rounding errors. */
    long raised(double amount, long step) {
        double safe = amount - 1e-6 * scale - 1e-9 * Math.abs(amount);
        return Math.max(0, (long) Math.ceil(safe / step) * step);
    }
}
