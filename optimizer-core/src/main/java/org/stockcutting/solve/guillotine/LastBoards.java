package org.stockcutting.solve.guillotine;

import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Ends a dive: as the boards that it has fixed are full ones, all the room to spare is in the last few; these are filled by ruin and
 * recreate, at last with all boards free.
 */
final class LastBoards {

    private static final int MEMORY = 200;
    /** They are given up when nothing was gained for as long as it took to get there, and not before so many steps. */
    private static final long PATIENT_STEPS = 100_000;

    private final Yard yard;
    private final double[] missing;
    private final Walk walk;

    /** @param missing what a missing piece of each type counts */
    LastBoards(Yard yard, double[] missing, Dice dice) {
        this.yard = yard;
        this.missing = missing;
        this.walk = new Walk(yard, dice);
    }

    /**
     * A draft with these boards, or some of them, that misses nothing; null if none was found.
     *
     * @param restSteps most steps for the boards that are not fixed
     * @param wholeSteps and for all
     */
    @Nullable Draft fill(Draft fixed, Allowance allowed, long restSteps, long wholeSteps, WorkMeter meter) {
        Draft all = filled(fixed, allowed, restSteps, wholeSteps, meter);
        return isMissing(all) ? null : all;
    }

    /** The same, but with what is missing where some is. */
    Draft filled(Draft fixed, Allowance allowed, long restSteps, long wholeSteps, WorkMeter meter) {
        Draft rest = walk(fixed.rest(), allowed, restSteps, meter);
        Draft all = fixed.copy();
        rest.boards.forEach(all::add);
        if (isMissing(all)) {
            all = walk(all, allowed, wholeSteps, meter);
        }
        return all;
    }

    static boolean isMissing(Draft draft) {
        return !Answers.isAllPlaceable(draft);
    }

    /** The first draft of a walk that misses nothing, else the one at which it ends. */
    private Draft walk(Draft start, Allowance allowed, long steps, WorkMeter meter) {
        WorkMeter part = meter.part(steps);
        walk.start(start, allowed, missing, MEMORY);
        Draft last = walk.current();
        double least = walk.reached();
        long patient = PATIENT_STEPS;
        while (isMissing(last) && part.spend(Weights.of(yard.takeOperations())) && part.used() < patient) {
            last = walk.move();
            if (walk.reached() < least) {
                least = walk.reached();
                patient = Math.max(patient, 2 * part.used());
            }
        }
        meter.absorb(part);
        return isMissing(last) ? walk.current() : last;
    }
}
