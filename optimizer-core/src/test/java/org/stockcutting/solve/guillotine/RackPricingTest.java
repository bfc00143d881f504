package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;

/** Quick patterns of boards with bad rectangles beside those of exact pricing, which other tests compare with published optima. */
class RackPricingTest {

    private static double[] worths(Model model, Random random) {
        double[] worths = new double[model.types];
        for (int t = 0; t < worths.length; t++) {
            worths[t] = model.area(t) * (0.7 + 0.6 * random.nextDouble());
        }
        return worths;
    }

    private static double worth(Board board, double[] worths) {
        return Refit.worth(board, worths);
    }

    @Test
    void patternsAreOnesThatTheBoardGivesAndNearlyTheBest() {
        double quick = 0;
        double exact = 0;
        for (long seed = 0; seed < 12; seed++) {
            Instance instance = Racks.enough(seed, 6, 5);
            Yard yard = new Yard(new Model(instance));
            double[] worths = worths(yard.model, new Random(seed));
            RackPricing pricing = new RackPricing(yard, new Dice(seed));
            pricing.set(worths);
            Draft draft = new Draft(yard);
            for (int s = 0; s + 1 < yard.model.stocks; s++) {
                ExactPricing.Priced priced = pricing.price(s);
                Board board = new Board(yard, s, priced.pattern());
                double most = new ZonePricing(yard.model, s).price(worths).value();
                assertThat(worth(board, worths)).isCloseTo(priced.value(), Offset.offset(1e-5 * most));
                assertThat(priced.value()).as("seed %d board %d", seed, s).isLessThanOrEqualTo(most * (1 + 1e-5));
                quick += priced.value();
                exact += most;
                draft.add(board);
            }
            assertThat(places(instance, draft)).as("seed %d", seed).isEmpty();
        }
        assertThat(quick / exact).isGreaterThan(0.97);
    }

    /** What is wrong with the places of the pieces; that there may be more of a type than are wanted is no matter here. */
    private static List<String> places(Instance instance, Draft draft) {
        int[] demand = new int[draft.left.length];
        List<Integer> left = new ArrayList<>();
        for (int t = 0; t < demand.length; t++) {
            demand[t] = instance.items().get(t).demand() + Math.max(0, -draft.left[t]);
            left.add(Math.max(0, draft.left[t]));
        }
        List<Answer.PatternUse> uses = new RegionWriter(draft.yard.model).uses(draft);
        Answer answer = new Answer(uses, left, List.of(), false, Answer.NO_BOUND);
        return LayoutCheck.faults(Racks.wanting(instance, demand), answer);
    }

    @Test
    void aClearBoardIsPricedExactly() {
        for (long seed = 0; seed < 6; seed++) {
            Yard yard = new Yard(new Model(Racks.enough(seed, 3, 6)));
            int clear = yard.model.stocks - 1;
            double[] worths = worths(yard.model, new Random(seed));
            RackPricing pricing = new RackPricing(yard, new Dice(seed));
            pricing.set(worths);
            double exact = new ExactPricing(yard.model, clear).price(worths).value();
            assertThat(pricing.price(clear).value()).isCloseTo(exact, Offset.offset(1e-4 * exact));
        }
    }

    @Test
    void nothingIsCutWhereNothingIsWorthAnything() {
        Yard yard = new Yard(new Model(Racks.enough(1, 2, 3)));
        RackPricing pricing = new RackPricing(yard, new Dice(1));
        pricing.set(new double[3]);
        assertThat(pricing.price(0).value()).isZero();
        assertThat(pricing.price(0).pattern().isRest()).isTrue();
    }
}
