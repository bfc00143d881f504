package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Boards cut in two or three stages: column generation over strips, a dive that takes whole boards of the programme's fractions, then
 * the same again and again for the pieces of a few boards. Every board goes through {@link SawRules}; limits that pricing leaves out
 * can only cost quality.
 */
final class StripSearch {

    /** Operations of one round of pricing that are still worth it. */
    private static final double MOST_WORK = 3e8;
    /** Racks of odd pieces are left to the general search. */
    private static final int MOST_STOCKS = 40;

    private static final int ROOT_ROUNDS = 1_000;
    private static final int ROUNDS = 25;
    private static final long LEAST_PATIENCE = 100;
    private static final long PATIENCE_A_PIECE = 5;
    private static final long MOST_PATIENCE = 4_000;
    /** Of so many tries one is a dive from the start. */
    private static final int DIVE_EVERY = 25;
    /** Most boards whose pieces are cut anew. */
    private static final int MOST_MENDED = 7;
    /** How often a later dive leaves the programme's first choice. */
    private static final double DEVIATE = 0.2;
    /** Values this near below a whole number count as one. */
    private static final double WHOLE = 1 - 1e-6;

    private final Yard yard;
    private final Model model;
    private final AreaBound area;
    private final StripMaster master;
    private final Filling filling;
    private final Dice dice;
    private final boolean bounds;
    private Draft best;
    private int[] root = new int[0];
    private long least;
    private long bound = Answer.NO_BOUND;

    private StripSearch(Yard yard, AreaBound area, List<StripPricing> pricings, long seed, boolean bounds) {
        this.yard = yard;
        this.model = yard.model;
        this.area = area;
        this.master = new StripMaster(yard, pricings);
        this.filling = new Filling(yard);
        this.dice = new Dice(seed);
        this.best = new Draft(yard);
        this.bounds = bounds;
    }

    /** A search for these boards, or nothing where strips do not say all there is to say: zones, sets, offcuts that are paid for. */
    static List<StripSearch> of(Yard yard, AreaBound area, long seed) {
        Model model = yard.model;
        int stages = Math.min(3, model.instance.limits().stages());
        boolean plain = !model.paysOffcuts && model.instance.groups().isEmpty() && model.stocks <= MOST_STOCKS;
        for (int s = 0; s < model.stocks; s++) {
            plain &= !model.hasZones(s);
        }
        if (stages < 2 || !plain) {
            return List.of();
        }
        List<StripPricing> pricings = new ArrayList<>();
        boolean bounds = model.instance.limits().stages() <= 3;
        double work = 0;
        Boolean first = model.instance.limits().firstCut();
        for (int s = 0; s < model.stocks; s++) {
            for (boolean upright : new boolean[] {false, true}) {
                if (first == null || first == upright) {
                    for (StripShapes shapes : StripShapes.of(model, s, upright, stages)) {
                        StripPricing pricing = new StripPricing(shapes);
                        pricings.add(pricing);
                        work += pricing.work();
                    }
                    bounds &= first == null || !holdsUncut(model, s);
                }
            }
        }
        if (pricings.isEmpty() || work > MOST_WORK) {
            return List.of();
        }
        return List.of(new StripSearch(yard, area, pricings, seed, bounds));
    }

    /** True if a board can be a piece as it is: with a first cut prescribed, pricing does not see that. */
    private static boolean holdsUncut(Model model, int s) {
        for (int t = 0; t < model.types; t++) {
            for (boolean turned : new boolean[] {false, true}) {
                if (model.allows(s, t, turned)
                        && model.length(s, t, turned) == model.boardLength(s)
                        && model.width(s, t, turned) == model.boardWidth(s)) {
                    return true;
                }
            }
        }
        return false;
    }

    Draft best() {
        return best;
    }

    /** Least cost that boards of so many stages can have if all is placed that fits, {@link Answer#NO_BOUND} if unknown. */
    long bound() {
        return bound;
    }

    private boolean isProved() {
        return Answers.isAllPlaceable(best) && best.cost() <= Math.max(bound, least);
    }

    /**
     * Searches until nothing better comes, a bound is met or the meter ends.
     *
     * @param start what is to be beaten
     * @param known a bound that is known already
     */
    void run(Draft start, long known, WorkMeter meter) {
        best = start;
        least = known;
        if (isProved()) {
            return;
        }
        Draft none = new Draft(yard);
        if (bounds) {
            bound(none, meter);
        }
        master.set(none, false);
        best.boards.forEach(master::add);
        master.generate(meter, ROOT_ROUNDS);
        root = master.basis();
        keep(dive(none, Long.MAX_VALUE, 0, meter));
        long patience = patience();
        int fruitless = 0;
        while (!isProved() && !meter.isExhausted() && fruitless < patience) {
            boolean again = fruitless % DIVE_EVERY == DIVE_EVERY - 1;
            boolean better = again ? keep(dive(none, best.cost(), DEVIATE, meter)) : keep(mend(meter));
            fruitless = better ? 0 : fruitless + 1;
        }
    }

    /** Tries without gain after which the search ends. */
    private long patience() {
        long pieces = model.instance.items().stream().mapToLong(i -> i.demand()).sum();
        return Math.min(MOST_PATIENCE, LEAST_PATIENCE + PATIENCE_A_PIECE * pieces);
    }

    private void bound(Draft none, WorkMeter meter) {
        master.set(none, true);
        best.boards.forEach(master::add);
        double[] worth =
                area.duals(Answers.placed(best)).stream().mapToDouble(d -> d).toArray();
        boolean whole = Answers.isAllPlaceable(best);
        WorkMeter part = meter.part(meter.left() / 4);
        master.generate(part, worth, whole ? best.cost() : Long.MAX_VALUE, area.costUnit());
        meter.absorb(part);
        bound = master.raised(area.costUnit()) > 0 ? master.raised(area.costUnit()) : Answer.NO_BOUND;
    }

    /** Takes a better draft; of equal ones the one whose free wood is gathered on fewer boards, since that is how a board is saved. */
    private boolean keep(Draft draft) {
        if (draft.isBetterThan(best)) {
            best = draft;
            return true;
        }
        if (!best.isBetterThan(draft) && gathered(draft) > gathered(best) + 1e-9) {
            best = draft;
        }
        return false;
    }

    private static double gathered(Draft draft) {
        double sum = 0;
        for (Board board : draft.boards) {
            sum += board.density() * board.density();
        }
        return sum;
    }

    /** The pieces of the emptiest board and a few others once more. */
    private Draft mend(WorkMeter meter) {
        Draft draft = best.copy();
        int wanted = Math.min(draft.boards.size(), 2 + dice.below(MOST_MENDED - 1));
        int emptiest = 0;
        for (int b = 1; b < draft.boards.size(); b++) {
            emptiest =
                    draft.boards.get(b).density() < draft.boards.get(emptiest).density() ? b : emptiest;
        }
        for (int n = 0; n < wanted; n++) {
            draft.remove(n == 0 ? emptiest : dice.below(draft.boards.size()));
        }
        return dive(draft, best.cost() + 1, dice.below(3) == 0 ? 0 : DEVIATE, meter);
    }

    /**
     * Adds boards to a draft until nothing is missing or it is seen that it will cost too much.
     *
     * @param target what it must cost less than
     * @param deviate how often the programme's first choice is left
     */
    private Draft dive(Draft start, long target, double deviate, WorkMeter meter) {
        Draft draft = start.copy();
        master.restore(root);
        while (!Answers.isAllPlaceable(draft)) {
            master.set(draft, false);
            boolean going = master.generate(meter, ROUNDS);
            long least = draft.cost() + master.raised(master.objective(), area.costUnit());
            boolean hopeless = Answers.isAllPlaceable(best) && least >= target;
            if (!going || hopeless || (!takeWhole(draft) && !takeOne(draft, deviate))) {
                break;
            }
        }
        filling.recreate(draft, Allowance.of(model, target == Long.MAX_VALUE ? target : target - 1), dice);
        filling.moveToCheaper(draft);
        return draft;
    }

    private boolean takeWhole(Draft draft) {
        boolean taken = false;
        for (int c = 0; c < master.boards().size(); c++) {
            double value = master.value(c);
            if (value > WHOLE) {
                Board board = master.boards().get(c);
                for (int n = times(draft, board, (int) (value + 1 - WHOLE)); n > 0; n--) {
                    draft.add(board);
                    taken = true;
                }
            }
        }
        return taken;
    }

    private int times(Draft draft, Board board, int most) {
        int times = Math.min(most, draft.available(board.stock));
        for (int t = 0; t < board.counts.length; t++) {
            if (board.counts[t] > 0) {
                // For the bound there are boards with more pieces than one may hold.
                boolean fits = board.counts[t] <= model.item(t).perBoard();
                times = fits ? Math.min(times, draft.left[t] / board.counts[t]) : 0;
            }
        }
        return times;
    }

    private boolean takeOne(Draft draft, double deviate) {
        Board chosen = null;
        double most = 0;
        for (int c = 0; c < master.boards().size(); c++) {
            double value = master.value(c);
            if (value > 1e-6 && times(draft, master.boards().get(c), 1) > 0) {
                double score = dice.unit() < deviate ? value * dice.unit() : value;
                if (score > most) {
                    most = score;
                    chosen = master.boards().get(c);
                }
            }
        }
        if (chosen == null) {
            return false;
        }
        draft.add(chosen);
        return true;
    }
}
