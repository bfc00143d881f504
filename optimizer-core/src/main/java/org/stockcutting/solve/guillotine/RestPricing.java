package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Programmes for what a dive has not fixed yet, with patterns that hold no more pieces of a type than are missing.
 *
 * <p>The bound's patterns may hold more, and then say little about plans. So patterns in use are refitted under the duals; where that
 * gives nothing, exact pricing does, its pattern cut down to what is missing and refitted, and again with every piece too many taking two
 * in a hundred off the type's worth. Patterns stay in the pool, so the next dive starts from a better programme.
 */
final class RestPricing {

    /** Exact pricings in a row, with less and less worth for types of which there are too many. */
    private static final int TRIES = 8;

    private static final double LESS = 0.02;
    /** Moves on a pattern of exact pricing. */
    private static final int MOVES = 500;
    /** Moves for each pattern in use that make a round. */
    private static final int MOVES_A_ROUND = 50;

    /** Rounds in one manner before the other has its turn. */
    private static final int TURN = 8;
    /** With six times as much the programme of all pieces costs up to 0.05 of a sheet more after as much work. */
    private static final double WARMTH = 0.005;

    private static final double MORE_WARMTH = 0.03;

    /** Operations that one pattern of the pool takes to become a column. */
    static final long POOLED = 100;

    /**
     * How patterns in use are refitted. Which way gets further differs from job to job.
     *
     * @param first moves on each, at first
     * @param last and once these gain nothing
     * @param gains patterns that gain before the programme is solved again, which changes what pieces are worth
     * @param rounds rounds that exact pricing counts as
     * @param warmth share of a board's worth by which the first moves may get worse
     */
    record Manner(int first, int last, int gains, int rounds, double warmth) {

        /** Each pattern in turn. */
        static final Manner THOROUGH = new Manner(50, 50, Integer.MAX_VALUE, 1, WARMTH);
        /** A few, by few moves. */
        static final Manner BRISK = new Manner(8, 64, 8, 4, WARMTH);
        /** Each pattern in turn, for short dives, whose few rounds find more where worse boards are accepted. */
        static final Manner SHORT = new Manner(50, 50, Integer.MAX_VALUE, 1, MORE_WARMTH);
    }

    private final Yard yard;
    private final Model model;
    private final ColumnBound bound;
    private final Dice dice;
    private final List<PriceList.Column> pool = new ArrayList<>();
    private int learnt;

    /** @param bound where patterns come from; it may go on */
    RestPricing(Yard yard, ColumnBound bound, Dice dice) {
        this.yard = yard;
        this.model = yard.model;
        this.bound = bound;
        this.dice = dice;
    }

    /** Takes the patterns that the bound has found since the last call. */
    void learn() {
        List<PriceList.Column> columns = bound.columns();
        for (; learnt < columns.size(); learnt++) {
            PriceList.Column column = columns.get(learnt);
            Cell pattern = column.pattern();
            if (pattern != null && yard.allows(column.stock(), pattern)) {
                pool.add(column);
            }
        }
    }

    /** All known patterns. */
    List<PriceList.Column> patterns() {
        return pool;
    }

    /** The programme over all known patterns for what a draft misses, solved. */
    RestProgramme programme(Draft draft, Allowance allowed, WorkMeter meter) {
        RestProgramme programme = new RestProgramme(model, draft, allowed);
        pool.forEach(programme::add);
        programme.solve();
        meter.spend(Weights.of(programme.takeOperations() + POOLED * pool.size()));
        return programme;
    }

    /**
     * Adds new patterns and solves again until what the draft misses costs little enough, or no pattern is found.
     *
     * @param enough what it may cost
     * @param rounds most work, in rounds over the patterns in use
     */
    void refine(RestProgramme programme, Draft draft, double enough, Manner manner, int rounds, WorkMeter meter) {
        int[] most = RestProgramme.most(draft);
        long round = (long) used(programme).size() * MOVES_A_ROUND;
        long left = rounds * round;
        Refit refit = new Refit(model, dice, manner.warmth());
        int moves = manner.first();
        boolean going = true;
        while (left > 0 && going && programme.value() > enough) {
            List<Integer> used = used(programme);
            int all = used.size();
            boolean gained = refit(refit, programme, used, most, moves, manner.gains());
            left -= (long) moves * (all - used.size());
            if (!gained && moves == manner.last()) {
                going = price(refit, programme, most, meter);
                left -= manner.rounds() * round;
            } else if (!gained) {
                moves = Math.min(4 * moves, manner.last());
            }
            programme.solve();
            going &= meter.spend(Weights.of(programme.takeOperations() + yard.takeOperations()));
        }
    }

    /** Adds new patterns, in either manner by turns, until none is found or the meter ends. */
    void exhaust(RestProgramme programme, Draft draft, WorkMeter meter) {
        double before = Double.POSITIVE_INFINITY;
        while (programme.value() < before && !meter.isExhausted()) {
            before = programme.value();
            refine(programme, draft, 0, Manner.THOROUGH, TURN, meter);
            refine(programme, draft, 0, Manner.BRISK, TURN, meter);
        }
    }

    /** The columns that a programme uses. */
    private static List<Integer> used(RestProgramme programme) {
        List<Integer> used = new ArrayList<>();
        for (int c = 0; c < programme.columns().size(); c++) {
            if (programme.use(c) > 1e-6) {
                used.add(c);
            }
        }
        return used;
    }

    /** Takes patterns in use off the list and refits them, until a few gain; false if none does. */
    private boolean refit(Refit refit, RestProgramme programme, List<Integer> used, int[] most, int moves, int enough) {
        double[] worths = programme.worths();
        int gains = 0;
        while (!used.isEmpty() && gains < enough) {
            int chosen = used.remove(dice.below(used.size()));
            gains += gain(refit, programme, programme.columns().get(chosen), most, worths, moves) ? 1 : 0;
        }
        return gains > 0;
    }

    /** Adds a pattern of exact pricing; false if none gains. */
    private boolean price(Refit refit, RestProgramme programme, int[] most, WorkMeter meter) {
        double[] worths = programme.worths();
        double[] tried = worths.clone();
        boolean gained = false;
        boolean over = true;
        for (int n = 0; n < TRIES && over && !gained && meter.spend(Weights.of(yard.takeOperations())); n++) {
            over = false;
            for (PriceList.Column column : bound.prices().price(tried, meter).columns()) {
                gained |= gain(refit, programme, column, most, worths, MOVES);
                over |= lower(tried, column, most);
            }
        }
        return gained;
    }

    /** Refits a pattern under these worths, and adds it if the programme gets cheaper. */
    private boolean gain(
            Refit refit, RestProgramme programme, PriceList.Column column, int[] most, double[] worths, int moves) {
        Cell pattern = column.pattern();
        Board start = pattern != null && yard.allows(column.stock(), pattern)
                ? Pruning.within(new Board(yard, column.stock(), pattern), most)
                : yard.empty(column.stock());
        PriceList.Column better = PriceList.Column.of(refit.improved(start, most, worths, moves));
        boolean gains = programme.gain(better, worths)
                > 1e-6 * model.stock(column.stock()).cost();
        if (gains && programme.add(better)) {
            pool.add(better);
            return true;
        }
        return false;
    }

    /** Makes types of which the pattern has too many worth less; false if there is none. */
    private static boolean lower(double[] worths, PriceList.Column column, int[] most) {
        boolean lowered = false;
        for (int t = 0; t < most.length; t++) {
            double over = column.counts()[t] - most[t];
            if (over > 0) {
                worths[t] *= Math.max(0.5, 1 - LESS * over);
                lowered = true;
            }
        }
        return lowered;
    }
}
