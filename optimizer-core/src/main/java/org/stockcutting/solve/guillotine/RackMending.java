package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Mends a draft of a rack of which little is missing: some boards at a time are taken out and dived for again, and what leaves no more
 * missing is kept. Only known patterns are used: dives leave more than enough of them, and without pricing there are so many more attempts
 * that in the same work 40 % of what was missing is left instead of 70 %.
 */
final class RackMending {

    private static final long STEPS = 20_000;
    /** The same where no more than {@link #NEAR} of the pieces is missing. */
    private static final long MORE_STEPS = 200_000;

    private static final double NEAR = 0.004;
    /** Work on the last boards of each attempt. */
    private static final long REST_STEPS = 200;
    /** So many boards are taken out at once, by chance up to so many more. */
    private static final int LEAST_BOARDS = 12;

    private static final int MORE_BOARDS = 10;
    private static final double NOISE = 0.2;

    private final RackDive.Kit kit;
    private final List<PriceList.Column> patterns;

    /** @param patterns those that are known */
    RackMending(RackDive.Kit kit, List<PriceList.Column> patterns) {
        this.kit = kit;
        this.patterns = patterns;
    }

    /** A draft that misses no more than this one, from boards that this aim allows. */
    Draft mended(Draft draft, RackAim aim, WorkMeter meter) {
        Draft none = new Draft(kit.yard());
        Draft best = draft;
        WorkMeter part = meter.part(MORE_STEPS);
        boolean going = aim.isMissing(best);
        while (going && part.spend(0)) {
            RackAim less = aim.mending(best);
            Draft next = attempt(best, less, part);
            best = less.missing(next) <= less.missing(best) ? next : best;
            boolean near = less.missing(best) <= NEAR * less.missing(none);
            going = aim.isMissing(best) && (near || part.used() < STEPS);
        }
        meter.absorb(part);
        return best;
    }

    /** One dive on a few boards; the draft itself where even fractions of patterns leave more missing. */
    private Draft attempt(Draft draft, RackAim less, WorkMeter meter) {
        Draft others = draft.copy();
        for (int n = LEAST_BOARDS + kit.dice().below(MORE_BOARDS); n > 0 && !others.boards.isEmpty(); n--) {
            others.remove(kit.dice().below(others.boards.size()));
        }
        int[] left = less.allowance().left(others);
        List<PriceList.Column> known = new ArrayList<>();
        draft.boards.forEach(board -> known.add(PriceList.Column.of(board)));
        known.addAll(patterns);
        known.removeIf(column -> left[column.stock()] <= 0);
        RackDive dive = new RackDive(kit, less, known, false, 0);
        RestProgramme programme = dive.solved(others, 0, meter);
        if (less.of(others) + programme.value() > less.room()) {
            return draft;
        }
        int open = 1 + kit.dice().below(2);
        Draft fixed = dive.fixed(others, programme, open, NOISE * kit.dice().unit(), 0, meter);
        return dive.filled(fixed, REST_STEPS, meter);
    }
}
