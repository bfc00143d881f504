package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Mends a draft of which little is missing, as dives leave it where hardly anything is to spare: a few boards at a time are taken out and
 * dived for again, and what leaves no more missing is kept. Only known patterns are used, of which dives leave many; the programme leaves
 * out the least area that it can from as many boards as there were.
 */
final class Mending {

    /** So many boards are taken out at once, by chance up to so many more. */
    private static final int LEAST_BOARDS = 3;

    private static final int MORE_BOARDS = 6;
    /** Work on the last boards of each attempt. */
    private static final long REST_STEPS = 2_000;
    /** Share by which chance may change which board is fixed next. */
    private static final double NOISE = 0.3;
    /** What a board counts, as a share of its area: enough to leave out those that are not needed. */
    private static final double LITTLE = 1e-4;

    private static final int MEMORY = 50;

    private final Yard yard;
    private final Model model;
    private final double[] missing;
    private final Dice dice;
    private final Walk walk;

    /** @param missing what a missing piece of each type counts */
    Mending(Yard yard, double[] missing, Dice dice) {
        this.yard = yard;
        this.model = yard.model;
        this.missing = missing;
        this.dice = dice;
        this.walk = new Walk(yard, dice);
    }

    /**
     * A draft on the same boards that misses no more than this one.
     *
     * @param cost most that boards may cost
     * @param known patterns
     */
    Draft mended(Draft draft, long cost, List<PriceList.Column> known, long steps, WorkMeter meter) {
        WorkMeter part = meter.part(steps);
        Draft best = draft;
        Allowance same = new Allowance(cost, used(draft));
        while (LastBoards.isMissing(best) && part.spend(Weights.of(yard.takeOperations()))) {
            Draft next = attempt(best, same, known, part);
            best = missing(next) <= missing(best) ? next : best;
        }
        meter.absorb(part);
        return best;
    }

    private int[] used(Draft draft) {
        int[] used = new int[model.stocks];
        Arrays.setAll(used, draft::used);
        return used;
    }

    private double missing(Draft draft) {
        double sum = 0;
        for (int t = 0; t < missing.length; t++) {
            sum += draft.left[t] * missing[t];
        }
        return sum;
    }

    /** One dive on a few boards; the draft itself where even fractions of patterns leave more missing. */
    private Draft attempt(Draft draft, Allowance same, List<PriceList.Column> known, WorkMeter meter) {
        Draft fixed = draft.copy();
        List<PriceList.Column> columns = new ArrayList<>();
        for (int n = LEAST_BOARDS + dice.below(MORE_BOARDS); n > 0 && !fixed.boards.isEmpty(); n--) {
            int chosen = dice.below(fixed.boards.size());
            columns.add(PriceList.Column.of(fixed.boards.get(chosen)));
            fixed.remove(chosen);
        }
        columns.addAll(known);
        double room = missing(draft) + wood(draft.boards.size() - fixed.boards.size());
        int open = 1 + dice.below(2);
        RestProgramme programme = programme(fixed, same, columns, meter);
        while (programme.value() <= room && !meter.isExhausted()) {
            int chosen = choose(programme, open);
            Draft next = chosen < 0 ? fixed : with(fixed, programme.columns().get(chosen), same);
            if (next.boards.size() == fixed.boards.size()) {
                return filled(fixed, same, meter);
            }
            room -= wood(next.boards.size() - fixed.boards.size());
            fixed = next;
            programme = programme(fixed, same, columns, meter);
        }
        return draft;
    }

    private double wood(int boards) {
        return boards * LITTLE * model.boardArea(0);
    }

    private RestProgramme programme(Draft draft, Allowance same, List<PriceList.Column> columns, WorkMeter meter) {
        double[] counts = new double[model.stocks];
        Arrays.fill(counts, wood(1));
        RestProgramme programme = new RestProgramme(model, draft, same, counts, missing);
        columns.forEach(programme::add);
        programme.solve();
        meter.spend(Weights.of(programme.takeOperations() + RestPricing.POOLED * columns.size()));
        return programme;
    }

    /** The column to fix next, most used first; -1 if so few boards are left that search does better. */
    private int choose(RestProgramme programme, int open) {
        double sum = 0;
        double most = 1e-9;
        int chosen = -1;
        double noise = NOISE * dice.unit();
        for (int c = 0; c < programme.columns().size(); c++) {
            double use = programme.use(c);
            sum += use;
            double rank = use * (1 - noise * dice.unit());
            if (rank > most) {
                most = rank;
                chosen = c;
            }
        }
        return sum <= open ? -1 : chosen;
    }

    private Draft with(Draft fixed, PriceList.Column column, Allowance same) {
        Cell pattern = column.pattern();
        if (pattern == null || !same.allows(fixed, column.stock())) {
            return fixed;
        }
        Board board = Pruning.within(new Board(yard, column.stock(), pattern), RestProgramme.most(fixed));
        Draft next = fixed.copy();
        if (!board.isEmpty()) {
            next.add(board);
        }
        return next;
    }

    private Draft filled(Draft fixed, Allowance same, WorkMeter meter) {
        WorkMeter part = meter.part(REST_STEPS);
        walk.start(fixed.rest(), same, missing, MEMORY);
        Draft rest = walk.current();
        Draft least = rest;
        while (LastBoards.isMissing(rest) && part.spend(Weights.of(yard.takeOperations()))) {
            rest = walk.move();
            least = missing(rest) < missing(least) ? rest : least;
        }
        meter.absorb(part);
        Draft all = fixed.copy();
        least.boards.forEach(all::add);
        return all;
    }
}
