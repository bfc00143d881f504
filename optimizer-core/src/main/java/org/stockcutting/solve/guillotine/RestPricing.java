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

    /** Exact pricings in a round, with less and less worth for types of which there are too many. */
    private static final int TRIES = 8;

    private static final double LESS = 0.02;
    /** Moves that refit a pattern in use, and one of exact pricing. */
    private static final int FEW_MOVES = 50;

    private static final int MOVES = 500;
    /** Operations that one pattern of the pool takes to become a column. */
    private static final long POOLED = 100;

    private final Yard yard;
    private final Model model;
    private final ColumnBound bound;
    private final Refit refit;
    private final List<PriceList.Column> pool = new ArrayList<>();
    private int learnt;

    /** @param bound where patterns come from; it may go on */
    RestPricing(Yard yard, ColumnBound bound, Dice dice) {
        this.yard = yard;
        this.model = yard.model;
        this.bound = bound;
        this.refit = new Refit(model, dice);
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

    /**
     * The programme for what a draft misses, over all known patterns and new ones until it costs little enough.
     *
     * @param enough what it may cost
     * @param rounds most rounds of pricing
     */
    RestProgramme programme(Draft draft, Allowance allowed, double enough, int rounds, WorkMeter meter) {
        RestProgramme programme = new RestProgramme(model, draft, allowed);
        pool.forEach(programme::add);
        programme.solve();
        meter.spend(Weights.of(programme.takeOperations() + POOLED * pool.size()));
        int[] most = RestProgramme.most(draft);
        boolean going = true;
        for (int n = 0; n < rounds && going && programme.value() > enough; n++) {
            going = price(programme, most, meter);
            programme.solve();
            going &= meter.spend(Weights.of(programme.takeOperations() + yard.takeOperations()));
        }
        return programme;
    }

    /** Adds patterns by which the programme gets cheaper; false if none was found. */
    private boolean price(RestProgramme programme, int[] most, WorkMeter meter) {
        double[] worths = programme.worths();
        boolean gained = false;
        int known = programme.columns().size();
        for (int c = 0; c < known; c++) {
            if (programme.use(c) > 1e-6) {
                gained |= gain(programme, programme.columns().get(c), most, worths, FEW_MOVES);
            }
        }
        double[] tried = worths.clone();
        boolean over = true;
        for (int n = 0; n < TRIES && over && !gained && meter.spend(Weights.of(yard.takeOperations())); n++) {
            over = false;
            for (PriceList.Column column : bound.prices().price(tried, meter).columns()) {
                gained |= gain(programme, column, most, worths, MOVES);
                over |= lower(tried, column, most);
            }
        }
        return gained;
    }

    /** Refits a pattern under these worths, and adds it if the programme gets cheaper. */
    private boolean gain(RestProgramme programme, PriceList.Column column, int[] most, double[] worths, int moves) {
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
