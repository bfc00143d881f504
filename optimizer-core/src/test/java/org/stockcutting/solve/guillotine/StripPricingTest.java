package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

class StripPricingTest {

    /** Plain recursion in real coordinates: a rectangle is a piece, or is cut at any whole place, changing direction so many times. */
    private static final class Naive {
        private final Instance instance;
        private final double[] worth;
        private final Map<Long, Double> known = new HashMap<>();

        Naive(Instance instance, double[] worth) {
            this.instance = instance;
            this.worth = worth;
        }

        double best() {
            StockType stock = instance.stocks().get(0);
            return best(stock.length(), stock.width(), 'n', instance.limits().stages());
        }

        private double best(long length, long width, char last, int open) {
            if (length <= 0 || width <= 0) {
                return 0;
            }
            long key = ((length * 1_000 + width) * 4 + (last == 'n' ? 0 : last == 'x' ? 1 : 2)) * 10 + open;
            Double before = known.get(key);
            if (before != null) {
                return before;
            }
            double best = single(length, width);
            Boolean first = instance.limits().firstCut();
            for (char way : new char[] {'x', 'y'}) {
                int then = way == last ? open : open - 1;
                if (then < 0 || (last == 'n' && first != null && first != (way == 'x'))) {
                    continue;
                }
                long kerf = way == 'x' ? instance.crosscutKerf() : instance.ripKerf();
                long whole = way == 'x' ? length : width;
                for (long cut = 1; cut < whole; cut++) {
                    long rest = whole - cut - kerf;
                    boolean reached = way == 'x'
                            ? width <= instance.limits().crosscutCapacity()
                            : Math.min(cut, rest) <= instance.limits().ripCapacity();
                    if (!reached) {
                        continue;
                    }
                    best = Math.max(
                            best,
                            way == 'x'
                                    ? best(cut, width, way, then) + best(rest, width, way, then)
                                    : best(length, cut, way, then) + best(length, rest, way, then));
                }
            }
            known.put(key, best);
            return best;
        }

        private double single(long length, long width) {
            StockType stock = instance.stocks().get(0);
            double best = 0;
            for (int t = 0; t < worth.length; t++) {
                ItemType item = instance.items().get(t);
                long own = item.width() == 0 ? stock.width() : item.width();
                boolean straight = stock.places().get(t).straight() && item.length() == length && own == width;
                boolean turned =
                        item.width() > 0 && stock.places().get(t).turned() && own == length && item.length() == width;
                best = straight || turned ? Math.max(best, worth[t]) : best;
            }
            return best;
        }
    }

    private static Instance random(Random random, int stages, int demand) {
        long length = 5 + random.nextInt(22);
        long width = 5 + random.nextInt(18);
        int types = 1 + random.nextInt(6);
        boolean fine = random.nextBoolean();
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        for (int t = 0; t < types; t++) {
            long across = random.nextInt(12) == 0 ? 0 : 1 + random.nextInt(fine ? 6 : 16);
            int many = demand == 0 ? 100_000 : 1 + random.nextInt(demand);
            items.add(new ItemType(1 + random.nextInt(fine ? 8 : 16), across, 1, many, many));
            places.add(new StockType.Placing(true, across > 0 && random.nextBoolean(), 0));
        }
        StockType stock = new StockType(length, width, 0, 0, 1, StockType.UNLIMITED, 0, List.of(), places);
        Boolean first = random.nextInt(3) == 0 ? (Boolean) random.nextBoolean() : null;
        Instance.Limits limits = new Instance.Limits(Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, stages, first, 0);
        return new Instance(items, List.of(stock), random.nextInt(4), random.nextInt(4), limits, List.of(), List.of());
    }

    private static double[] worths(Random random, Model model) {
        double[] worth = new double[model.types];
        for (int t = 0; t < worth.length; t++) {
            worth[t] = random.nextInt(8) == 0 ? 0 : model.area(t) * (0.8 + 0.4 * random.nextDouble());
        }
        return worth;
    }

    private static List<StripPricing> pricings(Model model) {
        List<StripPricing> pricings = new ArrayList<>();
        Boolean first = model.instance.limits().firstCut();
        for (boolean upright : new boolean[] {false, true}) {
            if (first == null || first == upright) {
                StripShapes.of(model, 0, upright, model.instance.limits().stages())
                        .forEach(shapes -> pricings.add(new StripPricing(shapes)));
            }
        }
        return pricings;
    }

    /** Worth of the pattern, which must be one that the limits allow. */
    private static double checked(Model model, double[] worth, int[] counts, @Nullable Cell root) {
        if (root == null || root.pieces == 0) {
            return 0;
        }
        Draft draft = new Draft(new Yard(model));
        Board board = new Board(draft.yard, 0, root);
        assertThat(board.counts).isEqualTo(counts);
        draft.add(board);
        Answer answer = new Answer(
                new RegionWriter(model).uses(draft),
                Arrays.stream(draft.left).boxed().toList(),
                List.of(),
                false,
                Answer.NO_BOUND);
        assertThat(LayoutCheck.faults(model.instance, answer)).isEmpty();
        double sum = 0;
        for (int t = 0; t < worth.length; t++) {
            sum += counts[t] * worth[t];
        }
        return sum;
    }

    @Test
    void twoAndThreeStagesEqualAPlainRecursion() {
        int upright = 0;
        for (long seed = 0; seed < 2_000; seed++) {
            Random random = new Random(seed);
            Instance instance = random(random, 2 + (int) (seed % 2), 0);
            Model model = new Model(instance);
            double[] worth = worths(random, model);
            double best = 0;
            for (StripPricing pricing : pricings(model)) {
                StripPricing.Priced priced = pricing.price(worth, 0);
                double sum = checked(model, worth, priced.counts(), priced.root());
                assertThat(sum).as("seed %d", seed).isCloseTo(priced.worth(), Offset.offset(1e-9 * (1 + sum)));
                upright += sum > best + 1e-9 && pricing.shapes.upright ? 1 : 0;
                best = Math.max(best, sum);
            }
            double expected = new Naive(instance, worth).best();
            StockType stock = instance.stocks().get(0);
            boolean uncut = instance.items().stream()
                    .anyMatch(i -> i.length() == stock.length() || i.length() == stock.width());
            if (instance.limits().firstCut() == null || !uncut) {
                assertThat(best)
                        .as("seed %d %s %s", seed, Arrays.toString(worth), instance)
                        .isCloseTo(expected, Offset.offset(1e-9 * (1 + expected)));
            } else {
                assertThat(best).isLessThanOrEqualTo(expected + 1e-9);
            }
        }
        assertThat(upright).as("boards better crosscut first").isGreaterThan(300);
    }

    /** With a fence: never below a recursion over real cuts, nearly always equal, patterns of what is left can be sawn. */
    @Test
    void withinTheFenceNeverBelowRealCuts() {
        int jobs = 0;
        int above = 0;
        int unsawn = 0;
        for (long seed = 0; seed < 1_500; seed++) {
            Random random = new Random(seed);
            Instance free = random(random, 2 + (int) (seed % 2), seed % 3 == 0 ? 3 : 0);
            StockType stock = free.stocks().get(0);
            Instance.Limits limits = new Instance.Limits(
                    1 + random.nextInt((int) stock.width() / 2),
                    Long.MAX_VALUE,
                    stock.width() / 2 + random.nextInt((int) stock.width()),
                    free.limits().stages(),
                    null,
                    0);
            Instance instance = new Instance(
                    free.items(), free.stocks(), free.crosscutKerf(), free.ripKerf(), limits, List.of(), List.of());
            Model model = new Model(instance);
            Yard yard = new Yard(model);
            double[] worth = worths(random, model);
            int[] most = new int[model.types];
            Arrays.setAll(most, t -> model.item(t).demand());
            double best = 0;
            for (StripPricing pricing : pricings(model)) {
                best = Math.max(best, pricing.price(worth, 0).worth());
                Cell left = pricing.price(worth, most, 0).root();
                unsawn += left == null || yard.allows(0, left) ? 0 : 1;
            }
            double expected = new Naive(instance, worth).best();
            if (seed % 3 != 0) {
                assertThat(best).as("seed %d", seed).isGreaterThanOrEqualTo(expected * (1 - 1e-9));
                jobs++;
                above += best > expected * (1 + 1e-9) ? 1 : 0;
            }
        }
        assertThat(above).as("of %d", jobs).isLessThan(jobs / 8);
        assertThat(unsawn).isLessThan(250);
    }

    @Test
    void patternsOfWhatIsLeftTakeNoMoreThanThatAndMostOfTheWorth() {
        double found = 0;
        double most = 0;
        for (long seed = 0; seed < 1_000; seed++) {
            Random random = new Random(seed);
            Model model = new Model(random(random, 2 + (int) (seed % 2), 4));
            double[] worth = worths(random, model);
            for (StripPricing pricing : pricings(model)) {
                StripPricing.Priced free = pricing.price(worth, 0);
                int[] left = new int[model.types];
                for (int t = 0; t < left.length; t++) {
                    left[t] = random.nextInt(model.item(t).demand() + 1);
                }
                StripPricing.Priced priced = pricing.price(worth, left, 0);
                double sum = checked(model, worth, priced.counts(), priced.root());
                for (int t = 0; t < left.length; t++) {
                    assertThat(priced.counts()[t]).as("seed %d", seed).isLessThanOrEqualTo(left[t]);
                }
                assertThat(sum).isCloseTo(priced.worth(), Offset.offset(1e-9 * (1 + sum)));
                assertThat(sum).isLessThanOrEqualTo(free.worth() * (1 + 1e-9) + 1e-9);
                boolean enough = true;
                for (int t = 0; t < left.length; t++) {
                    enough &= left[t] >= free.counts()[t];
                }
                if (enough) {
                    found += sum;
                    most += free.worth();
                }
            }
        }
        assertThat(most).isPositive();
        assertThat(found / most)
                .as("share of the best where all its pieces are there")
                .isGreaterThan(0.97);
    }
}
