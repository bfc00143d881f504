package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Patterns for jobs in which hardly two pieces are alike, by column generation with {@link LabelPricing}, and the programmes over them.
 * Boards of the search that gain come first: without them hundreds of rounds pass before the programme says anything.
 */
final class UnlikeColumns {

    /** Sets that a rectangle keeps, and where it must be known that nothing gains. */
    private static final int FEW_LABELS = 3;

    private static final int LABELS = 12;
    /** Pricings in a round, each with less worth for the pieces on the best board of the one before. */
    private static final int TRIES = 2;

    private static final double LESS = 0.1;
    /** Share of the duals priced before in the next ones (Wentges, International Transactions in Operational Research 4, 1997). */
    private static final double SMOOTH = 0.5;
    /** Boards of the search that are taken at once. */
    private static final int TAKEN = 20;

    private static final double TOLERANCE = 1e-6;
    /** Operations that one look at a pattern takes. */
    private static final long POOLED = 100;

    private final Yard yard;
    private final Model model;
    private final List<LabelPricing> quick = new ArrayList<>();
    private final List<LabelPricing> thorough = new ArrayList<>();
    private final List<PriceList.Column> pool = new ArrayList<>();

    UnlikeColumns(Yard yard) {
        this.yard = yard;
        this.model = yard.model;
        for (int s = 0; s < model.stocks; s++) {
            quick.add(new LabelPricing(yard, s, FEW_LABELS));
            thorough.add(new LabelPricing(yard, s, LABELS));
        }
    }

    /** Takes the boards that gain, the best first. */
    void learn(List<Board> boards, Allowance allowed, WorkMeter meter) {
        List<PriceList.Column> open = new ArrayList<>();
        boards.forEach(board -> open.add(PriceList.Column.of(board)));
        RestProgramme programme = programme(new Draft(yard), allowed, meter);
        boolean going = !open.isEmpty();
        while (going && meter.spend(Weights.of(programme.takeOperations() + POOLED * open.size()))) {
            double[] worths = programme.worths();
            double[] gains = new double[open.size()];
            List<Integer> gaining = new ArrayList<>();
            for (int c = 0; c < gains.length; c++) {
                gains[c] = gains(programme, open.get(c), worths);
                if (gains[c] > 0) {
                    gaining.add(c);
                }
            }
            gaining.sort(Comparator.comparingDouble(c -> -gains[c]));
            going = false;
            for (int c : gaining.subList(0, Math.min(TAKEN, gaining.size()))) {
                going |= add(programme, open.get(c));
            }
            programme.solve();
        }
    }

    private RestProgramme programme(Draft fixed, Allowance allowed, WorkMeter meter) {
        RestProgramme programme = new RestProgramme(model, fixed, allowed);
        pool.forEach(programme::add);
        programme.solve();
        meter.spend(Weights.of(programme.takeOperations() + POOLED * pool.size()));
        return programme;
    }

    private boolean add(RestProgramme programme, PriceList.Column column) {
        if (programme.add(column)) {
            pool.add(column);
            return true;
        }
        return false;
    }

    /** The programme for what a draft misses, with new patterns until it is within the allowance or they can't bring it there. */
    RestProgramme solved(Draft fixed, Allowance allowed, WorkMeter meter) {
        Generation generation = new Generation(fixed, programme(fixed, allowed, meter));
        double room = allowed.cost() - fixed.cost() + TOLERANCE;
        boolean going = true;
        while (going && generation.programme.value() > room && !meter.isExhausted()) {
            Round round = generation.round(quick, meter);
            going = !round.ends() && round.bound() <= room;
        }
        return generation.programme;
    }

    /** The same with patterns until there is little to gain; that it can't be brought within the allowance is looked at closely. */
    RestProgramme solvedWell(Draft fixed, Allowance allowed, WorkMeter meter) {
        Generation generation = new Generation(fixed, programme(fixed, allowed, meter));
        double room = allowed.cost() - fixed.cost() + TOLERANCE;
        List<LabelPricing> pricings = quick;
        boolean going = true;
        while (going && !meter.isExhausted()) {
            Round round = generation.round(pricings, meter);
            double left = room - generation.programme.value();
            if (round.ends() || round.bound() > room) {
                going = pricings == quick && left < 0;
                pricings = thorough;
                generation.smooth = false;
            } else {
                pricings = quick;
                // Once there is room, further patterns are worth it only while they might double it.
                going = left <= 0 || generation.programme.value() - round.bound() > left;
            }
        }
        return generation.programme;
    }

    /**
     * One round of pricing.
     *
     * @param ends true if nothing gained under the programme's own duals
     * @param bound what the programme would cost at least with all patterns, if pricing had found the best
     */
    private record Round(boolean ends, double bound) {}

    /** Column generation for one programme. */
    private final class Generation {

        final RestProgramme programme;
        final Draft fixed;
        /** False if the programme's own duals are to be priced next. */
        boolean smooth = true;

        private double[] tried;

        Generation(Draft fixed, RestProgramme programme) {
            this.fixed = fixed;
            this.programme = programme;
            this.tried = programme.worths();
        }

        /** Adds what gains, and solves the programme again. */
        Round round(List<LabelPricing> pricings, WorkMeter meter) {
            double[] worths = programme.worths();
            double[] before = tried;
            tried = new double[worths.length];
            Arrays.setAll(tried, t -> smooth ? SMOOTH * before[t] + (1 - SMOOTH) * worths[t] : worths[t]);
            int[] most = RestProgramme.most(fixed);
            double[] lowered = tried.clone();
            double factor = 1;
            boolean gained = false;
            for (int n = 0; n < TRIES; n++) {
                Board top = null;
                for (LabelPricing pricing : pricings) {
                    List<Board> boards = pricing.price(lowered, most);
                    meter.spend(Weights.of(pricing.takeOperations() + yard.takeOperations()));
                    if (!boards.isEmpty()) {
                        top = better(top, boards.get(0), lowered);
                        factor = n > 0 ? factor : Math.min(factor, factor(boards.get(0)));
                        gained |= addGaining(programme, boards, worths);
                    }
                }
                lower(lowered, top);
            }
            boolean ends = !gained && !smooth;
            smooth = gained;
            programme.solve();
            meter.spend(Weights.of(programme.takeOperations()));
            return new Round(ends, factor * worthMissing());
        }

        /** What worths are to be multiplied by so that the board gains nothing (Farley, Operations Research 38, 1990). */
        private double factor(Board best) {
            return best.cost / Math.max(best.cost, Refit.worth(best, tried));
        }

        private double worthMissing() {
            double worth = 0;
            for (int t = 0; t < model.types; t++) {
                worth += tried[t] * fixed.left[t];
            }
            return worth;
        }
    }

    private static Board better(@Nullable Board known, Board other, double[] worths) {
        return known == null || Refit.worth(other, worths) > Refit.worth(known, worths) ? other : known;
    }

    private boolean addGaining(RestProgramme programme, List<Board> boards, double[] worths) {
        boolean gained = false;
        for (Board board : boards) {
            PriceList.Column column = PriceList.Column.of(board);
            if (gains(programme, column, worths) > 0) {
                gained |= add(programme, column);
            }
        }
        return gained;
    }

    /** What a column gains, 0 where that is next to nothing. */
    private double gains(RestProgramme programme, PriceList.Column column, double[] worths) {
        double gain = programme.gain(column, worths);
        return gain > TOLERANCE * model.stock(column.stock()).cost() ? gain : 0;
    }

    private void lower(double[] worths, @Nullable Board board) {
        for (int t = 0; t < worths.length && board != null; t++) {
            worths[t] *= board.counts[t] > 0 ? 1 - LESS : 1;
        }
    }

    /** Forgets patterns that no plan within the allowance can have, as they lose more than the room that the whole programme leaves. */
    void forget(RestProgramme whole, Allowance allowed) {
        double[] worths = whole.worths();
        double room = allowed.cost() - whole.value();
        pool.removeIf(column -> whole.gain(column, worths) < -room - TOLERANCE);
    }
}
