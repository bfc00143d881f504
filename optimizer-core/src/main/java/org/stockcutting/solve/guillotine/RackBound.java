package org.stockcutting.solve.guillotine;

import java.util.Arrays;
import java.util.List;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Worths from which the certificate of a rack of boards with bad zones follows: duals of the Gilmore and Gomory programme over patterns that
 * {@link RackPricing} finds. Its patterns are a little worse than the best, so its value is no bound; the certificate checker finds for
 * itself what a board gives under these worths, bad zones and all. Exact pricing with zones would take a hundred times as long.
 */
final class RackBound {

    /** Half as many certify a little less, twice as many nothing more. */
    private static final int ROUNDS = 80;

    private final Yard yard;
    private final RestProgramme programme;
    private double[] worths;

    /** @param best a draft in which nothing is missing that could be placed; its boards are patterns to begin with */
    RackBound(Yard yard, Draft best) {
        this.yard = yard;
        this.programme = new RestProgramme(yard.model, new Draft(yard));
        this.worths = new double[yard.model.types];
        best.boards.forEach(board -> programme.add(PriceList.Column.of(board)));
    }

    /** Goes on for a number of rounds, or until the meter ends. */
    void run(long seed, WorkMeter meter) {
        RackPricing pricing = new RackPricing(yard, new Dice(seed));
        for (int round = 0; round < ROUNDS && !meter.isExhausted(); round++) {
            programme.solve();
            pricing.set(programme.worths());
            for (int s = 0; s < yard.model.stocks; s++) {
                Cell pattern = pricing.price(s).pattern();
                programme.add(PriceList.Column.of(s, pattern, yard.model.types));
            }
            meter.spend(Weights.of(yard.takeOperations() + programme.takeOperations()));
        }
        programme.solve();
        worths = programme.worths();
    }

    /** What the programme comes to, in cost units: a little more than its best bound. */
    double value() {
        return programme.value();
    }

    /** Worth of one piece of each type in cost units. */
    List<Double> duals() {
        return Arrays.stream(worths).boxed().toList();
    }
}
