package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/** Pricing with every piece no more often than wanted, against all ways to cut one board. */
final class LabelPricingTest {

    /** More than a handful of pieces has subsets: nothing is forgotten then. */
    private static final int ALL = 64;

    private static final int SEEDS = 300;
    private static final int FEW_SEEDS = 40;
    /** All of them divide the points of a side. */
    private static final long[] LENGTHS = {6, 10};

    private static final long[] WIDTHS = {5, 6};

    /** One small board and at most five pieces, some of them alike. */
    private static Instance job(long seed, int times, long kerf) {
        Random random = new Random(seed);
        int types = 1 + random.nextInt(5);
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        int left = 5;
        for (int t = 0; t < types; t++) {
            long length = 1 + random.nextInt(9);
            long width = 1 + random.nextInt(7);
            int demand = Math.max(1, Math.min(left - (types - t - 1), 1 + random.nextInt(2)));
            left -= demand;
            long worth = length * width * (8 + random.nextInt(5));
            items.add(new ItemType(times * length, times * width, worth, demand, demand));
            places.add(new StockType.Placing(true, random.nextBoolean(), 0));
        }
        long length = times * LENGTHS[random.nextInt(LENGTHS.length)];
        long width = times * WIDTHS[random.nextInt(WIDTHS.length)];
        StockType board = new StockType(length, width, 0, 0, 1, 1, 0, List.of(), places);
        return new Instance(items, List.of(board), kerf, kerf, Instance.Limits.NONE, List.of(), List.of());
    }

    private static List<Board> priced(Instance instance, int labels) {
        Model model = new Model(instance);
        double[] worths =
                instance.items().stream().mapToDouble(ItemType::weight).toArray();
        Yard yard = new Yard(model);
        List<Board> boards = new LabelPricing(yard, 0, labels).price(worths, RestProgramme.most(new Draft(yard)));
        for (Board board : boards) {
            Draft draft = new Draft(yard);
            draft.add(board);
            Answer answer = new Answers(new AreaBound(model)).interim(draft);
            assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
            for (int t = 0; t < model.types; t++) {
                assertThat(board.counts[t])
                        .isLessThanOrEqualTo(instance.items().get(t).demand());
            }
        }
        assertThat(boards.stream().map(board -> Refit.worth(board, worths)))
                .isSortedAccordingTo((a, b) -> Double.compare(b, a));
        return boards;
    }

    private static double best(Instance instance, List<Board> boards) {
        double[] worths =
                instance.items().stream().mapToDouble(ItemType::weight).toArray();
        return boards.isEmpty() ? 0 : Refit.worth(boards.get(0), worths);
    }

    @Test
    void withAllSetsKeptItIsExact() {
        int several = 0;
        for (long seed = 0; seed < SEEDS; seed++) {
            Instance instance = job(seed, 1, seed % 3);
            List<Board> boards = priced(instance, ALL);
            assertThat(best(instance, boards)).as("seed " + seed).isEqualTo(new Oracle(instance).bestWeight());
            several += !boards.isEmpty() && boards.get(0).root.pieces > 2 ? 1 : 0;
        }
        assertThat(several).isGreaterThan(SEEDS / 10);
    }

    @Test
    void withFewSetsItIsNeverAboveAndSeldomBelow() {
        int best = 0;
        for (long seed = 0; seed < SEEDS; seed++) {
            Instance instance = job(seed, 1, seed % 3);
            double found = best(instance, priced(instance, 3));
            double most = new Oracle(instance).bestWeight();
            assertThat(found).isLessThanOrEqualTo(most);
            best += found == most ? 1 : 0;
        }
        assertThat(best).isGreaterThan(SEEDS * 95 / 100);
    }

    /** Sizes that are multiples of its step lose nothing on the grid of a large board. */
    @Test
    void aLargeBoardIsPricedOnAGrid() {
        for (long seed = 0; seed < FEW_SEEDS; seed++) {
            Instance small = job(seed, 1, 0);
            Instance large = job(seed, 300, 0);
            assertThat(best(large, priced(large, ALL))).as("seed " + seed).isEqualTo(new Oracle(small).bestWeight());
        }
    }

    @Test
    void onAGridThatSizesMissPatternsStayPatterns() {
        for (long seed = 0; seed < FEW_SEEDS; seed++) {
            Instance small = job(seed, 1, 0);
            Instance large = job(seed, 101, 3);
            assertThat(best(large, priced(large, ALL)))
                    .as("seed " + seed)
                    .isLessThanOrEqualTo(new Oracle(small).bestWeight());
        }
    }
}
