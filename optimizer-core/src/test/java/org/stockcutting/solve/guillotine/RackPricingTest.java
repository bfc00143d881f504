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

    /** Cuts that served a pattern are there for the next one. */
    @Test
    void patternsGetBetterFromCallToCall() {
        double first = 0;
        double last = 0;
        double exact = 0;
        for (long seed = 0; seed < 8; seed++) {
            Yard yard = new Yard(new Model(Racks.enough(seed, 6, 7)));
            double[] worths = worths(yard.model, new Random(seed));
            RackPricing pricing = new RackPricing(yard, new Dice(seed));
            pricing.set(worths);
            for (int s = 0; s + 1 < yard.model.stocks; s++) {
                pricing.places(1);
                first += pricing.price(s).value();
                for (int n = 0; n < 8; n++) {
                    pricing.price(s);
                }
                last += pricing.price(s).value();
                exact += new ZonePricing(yard.model, s).price(worths).value();
            }
        }
        assertThat(last).isGreaterThan(first);
        assertThat(last / exact).isBetween(0.98, 1.0);
    }

    /** Also a clear board, which the table would cut either way. */
    @Test
    void patternsAreCutFirstAsTheShopWantsIt() {
        for (boolean crosscut : new boolean[] {true, false}) {
            int split = 0;
            for (long seed = 0; seed < 6; seed++) {
                Instance free = Racks.enough(seed, 5, 6);
                Yard yard = new Yard(new Model(free.cutFirst(crosscut)));
                RackPricing pricing = new RackPricing(yard, new Dice(seed));
                pricing.set(worths(yard.model, new Random(seed)));
                for (int s = 0; s < yard.model.stocks; s++) {
                    Cell pattern = pricing.price(s).pattern();
                    assertThat(pattern.isRest()).isFalse();
                    assertThat(yard.allows(s, pattern)).isTrue();
                    split += pattern.isSplit() && pattern.crosscut == crosscut ? 1 : 0;
                }
            }
            assertThat(split).isGreaterThan(30);
        }
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
