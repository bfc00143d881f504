package org.stockcutting.solve.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** The longest leftover at frozen value, tiny instances against trying every pattern of every board. */
class LongLeftoverTest {

    private static WorkMeter meter(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 60_000_000_000L, new CancelToken());
    }

    /** An answer, the same stretched, and what it cost before. */
    private record Stretched(Instance instance, Answer before, LongLeftover.Result result) {
        static Stretched of(Instance instance) {
            Answer before = new ColumnEngine().solve(instance, meter(2_000_000), 1, Engine.EngineListener.NONE);
            List<Boolean> onHand =
                    instance.stocks().stream().map(stock -> stock.cost() == 0).toList();
            return new Stretched(
                    instance, before, new LongLeftover().stretch(instance, before.uses(), onHand, meter(3_000_000), 1));
        }

        Answer after() {
            return new Answer(
                    result.uses(), before.unplaced(), before.duals(), before.provedPlacement(), before.searchedBound());
        }
    }

    private static Instance withoutZones(Instance instance) {
        List<StockType> stocks = new ArrayList<>();
        for (StockType stock : instance.stocks()) {
            stocks.add(new StockType(
                    stock.length(),
                    stock.width(),
                    stock.rawEnd(),
                    0,
                    stock.cost(),
                    stock.copies(),
                    0,
                    List.of(),
                    stock.places()));
        }
        return new Instance(
                instance.items(),
                stocks,
                instance.crosscutKerf(),
                instance.ripKerf(),
                instance.limits(),
                List.of(),
                List.of());
    }

    @Test
    void isTheLongestThereIsWhereCertifiedAndNeverLonger() {
        int certified = 0;
        int longer = 0;
        int asked = 0;
        for (long seed = 40_000; seed < 40_400; seed++) {
            Instance instance = withoutZones(new TinyLines(seed, 20, 3).plain());
            Stretched stretched = Stretched.of(instance);
            if (stretched.before().uses().isEmpty()) {
                continue;
            }
            asked++;
            String what = "seed " + seed;
            long[] before = LineInspector.inspect(what, instance, stretched.before());
            long[] after = LineInspector.inspect(what, instance, stretched.after());
            assertThat(after[0]).as("%s: unplaced", what).isEqualTo(before[0]);
            assertThat(after[1]).as("%s: cost", what).isLessThanOrEqualTo(before[1]);
            long length = stretched.result().length();
            assertThat(length)
                    .as("%s: as cut", what)
                    .isEqualTo(longest(instance, stretched.result().uses()));
            long most = new Tries(instance, stretched.before(), before[1]).longest();
            assertThat(length).as("%s of %s", what, instance).isLessThanOrEqualTo(most);
            if (stretched.result().certified()) {
                assertThat(length).as("%s: certified, %s", what, instance).isEqualTo(most);
                certified++;
            }
            longer += length > longest(instance, stretched.before().uses()) ? 1 : 0;
        }
        assertThat(certified).as("certified of %d", asked).isGreaterThan(asked / 2);
        assertThat(longer).as("longer than the engine's of %d", asked).isGreaterThan(10);
    }

    @Test
    void leavesBadZonesAlone() {
        for (long seed = 60_000; seed < 60_400; seed++) {
            Instance instance = new TinyLines(seed, 20, 3).plain();
            Stretched stretched = Stretched.of(instance);
            String what = "seed " + seed;
            assertThat(LineInspector.inspect(what, instance, stretched.after())[1])
                    .as(what)
                    .isLessThanOrEqualTo(LineInspector.inspect(what, instance, stretched.before())[1]);
        }
    }

    @Test
    void gathersTheWasteOfTwoBoards() {
        // Two boards of 10 for pieces 3, 3, 2, 2: 3+2 twice leaves 5 and 5, 3+3+2+2 on one board would leave a whole
        // board.
        // With a piece of 7 in addition both boards are needed: 7+3 and 3+2+2 leave 0 and 3, which is the longest.
        List<ItemType> items =
                List.of(new ItemType(7, 0, 7, 1, 1), new ItemType(3, 0, 3, 2, 2), new ItemType(2, 0, 2, 2, 2));
        StockType.Placing place = new StockType.Placing(true, false, 0);
        StockType stock =
                new StockType(10, 1, 0, 0, 5, StockType.UNLIMITED, 0, List.of(), List.of(place, place, place));
        Instance instance = new Instance(items, List.of(stock), 0, 0, Instance.Limits.NONE, List.of(), List.of());
        LongLeftover.Result result = Stretched.of(instance).result();
        assertThat(result.length()).isEqualTo(3);
        assertThat(result.certified()).isTrue();
    }

    /** Counts behind the last piece up to the raw end, without the engine's help. */
    private static long longest(Instance instance, List<Answer.PatternUse> uses) {
        long longest = 0;
        for (Answer.PatternUse use : uses) {
            StockType stock = instance.stocks().get(use.stock());
            long end = Tries.end(use.layout());
            long left = end == stock.length() ? 0 : stock.length() + stock.rawEnd() - end - instance.crosscutKerf();
            longest = Math.max(longest, left);
        }
        return longest;
    }

    /** Cuts every pattern from every board and asks the oracle whether the rest can be placed for what is left of the value. */
    private static final class Tries {
        private final Instance instance;
        private final int[] placed;
        private final long value;
        private long longest;

        Tries(Instance instance, Answer answer, long value) {
            this.instance = instance;
            this.value = value;
            this.placed = new int[instance.items().size()];
            for (int i = 0; i < placed.length; i++) {
                placed[i] = instance.items().get(i).demand() - answer.unplaced().get(i);
            }
        }

        static long end(Region region) {
            if (region instanceof Region.Split split) {
                return split.parts().stream().mapToLong(Tries::end).max().orElse(0);
            }
            return region.x() + region.length();
        }

        long longest() {
            for (int s = 0; s < instance.stocks().size(); s++) {
                cut(s, 0, 0, new int[placed.length]);
            }
            return longest;
        }

        private void cut(int s, int item, long size, int[] counts) {
            StockType stock = instance.stocks().get(s);
            if (item == placed.length) {
                long left =
                        size == stock.length() + instance.crosscutKerf() ? 0 : stock.length() + stock.rawEnd() - size;
                if (size > 0 && left > longest && restCost(s, counts) <= value - stock.cost()) {
                    longest = left;
                }
                return;
            }
            ItemType type = instance.items().get(item);
            int most = stock.places().get(item).straight() ? Math.min(placed[item], type.perBoard()) : 0;
            for (int c = 0; c <= most; c++) {
                long next = size + c * (type.length() + instance.crosscutKerf());
                if (next <= stock.length() + instance.crosscutKerf()) {
                    counts[item] = c;
                    cut(s, item + 1, next, counts);
                }
            }
            counts[item] = 0;
        }

        private long restCost(int s, int[] counts) {
            List<ItemType> items = new ArrayList<>();
            for (int i = 0; i < placed.length; i++) {
                ItemType type = instance.items().get(i);
                items.add(new ItemType(
                        type.length(), type.width(), type.weight(), placed[i] - counts[i], type.perBoard()));
            }
            List<StockType> stocks = new ArrayList<>(instance.stocks());
            StockType own = stocks.get(s);
            if (own.copies() != StockType.UNLIMITED) {
                stocks.set(
                        s,
                        new StockType(
                                own.length(),
                                own.width(),
                                own.rawEnd(),
                                0,
                                own.cost(),
                                own.copies() - 1,
                                0,
                                List.of(),
                                own.places()));
            }
            long[] best = new LineOracle(new Instance(
                            items,
                            stocks,
                            instance.crosscutKerf(),
                            instance.ripKerf(),
                            instance.limits(),
                            List.of(),
                            List.of()))
                    .best();
            return best[0] > 0 ? Long.MAX_VALUE : best[1];
        }
    }
}
