package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Boards cut in two or three stages: column generation over strips, dives ({@link StripDive}), and the same again and again for the
 * pieces of a few boards. Every board goes through {@link SawRules}; limits that pricing leaves out
 * can only cost quality.
 */
final class StripSearch {

    /** Operations of one round of pricing that are still worth it. */
    private static final double MOST_WORK = 3e8;
    /** Racks of odd pieces are left to the general search. */
    private static final int MOST_STOCKS = 40;

    private static final long LEAST_PATIENCE = 100;
    private static final long PATIENCE_A_PIECE = 5;
    private static final long MOST_PATIENCE = 4_000;
    /** Where a gain is a whole board, dives take so many times the work of mending; elsewhere each takes half. */
    private static final int MORE_DIVES = 10;
    /** Most boards whose pieces are cut anew. */
    private static final int MOST_MENDED = 7;
    /** How often a later dive leaves the programme's first choice. */
    private static final double DEVIATE = 0.2;

    private final Yard yard;
    private final Model model;
    private final AreaBound area;
    private final StripMaster master;
    private final StripDive dive;
    private final Dice dice;
    private final boolean bounds;
    private Draft best;
    private long least;
    private long bound = Answer.NO_BOUND;

    private StripSearch(Yard yard, AreaBound area, List<StripPricing> pricings, long seed, boolean bounds) {
        this.yard = yard;
        this.model = yard.model;
        this.area = area;
        this.master = new StripMaster(yard, pricings);
        this.dice = new Dice(seed);
        this.dive = new StripDive(yard, area, master, dice);
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
        dive.start(best, meter);
        keep(dive.run(none, Long.MAX_VALUE, 0, meter));
        long patience = patience();
        int fruitless = 0;
        long ahead = 0;
        long share = isOneSize() ? MORE_DIVES : 1;
        while (!isProved() && !meter.isExhausted() && fruitless < patience) {
            long before = meter.used();
            boolean again = ahead <= 0;
            boolean better = again ? keep(dive.run(none, most(area.costUnit()), DEVIATE, meter)) : keep(mend(meter));
            fruitless = better ? 0 : fruitless + 1;
            ahead += (meter.used() - before) * (again ? 1 : -share);
        }
    }

    /** True if a gain is a whole board: mending hardly ever gets that far. */
    private boolean isOneSize() {
        return model.stocks == 1;
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
        return dive.run(draft, most(0), dice.below(3) == 0 ? 0 : DEVIATE, meter);
    }

    /** What a draft may cost to be of use, when it is to be so much cheaper than a plan. */
    private long most(long less) {
        return Answers.isAllPlaceable(best) ? best.cost() - less : Long.MAX_VALUE;
    }
}
