package org.stockcutting.solve.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

class SearchEngineTest {

    private static final long STEPS = 300_000;
    private static final SearchEngine ENGINE = new SearchEngine();

    private static List<Answer.PatternUse> improve(SearchTask task, long seed) {
        return ENGINE.improve(task, Boards.meter(STEPS), seed);
    }

    /** Pairs of 30 and 60 lie crosswise; dealt the other way both boards hold a whole pair. */
    @Test
    void setsAreBroughtTogetherAtNoCost() {
        Boards boards = new Boards().item(30, 2).item(60, 2).forSale(121, 100);
        boards.group(List.of(0, 1), List.of(1, 1));
        SearchTask task = boards.task(boards.row(0, 1, 0, 0), boards.row(0, 1, 1, 1));
        List<Answer.PatternUse> found = improve(task, 1);
        assertThat(Boards.fault(task.instance(), task.start(), found)).isEmpty();
        assertThat(Boards.value(task.instance(), found)).isEqualTo(200);
        assertThat(found).hasSize(1);
        assertThat(Boards.itemsOf(found.get(0))).containsExactly(1, 0);
    }

    /** A set of 70, 25, 25 needs 122 with its kerfs, one more than the boards of the start have. */
    @Test
    void setsAreBroughtTogetherEvenWhereThatCosts() {
        Boards boards = new Boards().item(70, 2).item(25, 4).forSale(121, 100);
        boards.group(List.of(0, 1), List.of(1, 2));
        SearchTask task = boards.task(boards.row(0, 1, 0, 1), boards.row(0, 1, 0, 1), boards.row(0, 1, 1, 1));
        List<Answer.PatternUse> found = improve(task, 1);
        // Nothing valid exists, so the start comes back.
        assertThat(found).isEqualTo(task.start());
        Boards longer = new Boards().item(70, 2).item(25, 4).forSale(121, 100).forSale(122, 130);
        longer.group(List.of(0, 1), List.of(1, 2));
        SearchTask possible = longer.task(longer.row(0, 1, 0, 1), longer.row(0, 1, 0, 1), longer.row(0, 1, 1, 1));
        List<Answer.PatternUse> repaired = improve(possible, 1);
        assertThat(Boards.fault(possible.instance(), possible.start(), repaired))
                .isEmpty();
        assertThat(Boards.value(possible.instance(), repaired)).isEqualTo(260);
    }

    /**
     * With their kerfs 46, 46, 31, 31, 21 of 101 a board, 175 in all. No choice of them is 99, 100 or 101, so the fullest board holds 98
     * and the other 77, which leaves 23 behind its last kerf.
     */
    @Test
    void longestLeftoverIsFound() {
        Boards boards = new Boards().item(45, 2).item(30, 2).item(20, 1).forSale(100, 100);
        SearchTask task = boards.task(boards.row(0, 1, 0, 1), boards.row(0, 1, 0, 1, 2));
        List<Answer.PatternUse> found = improve(task, 1);
        assertThat(Boards.fault(task.instance(), task.start(), found)).isEmpty();
        assertThat(Boards.longestLeftover(task.instance(), found)).isEqualTo(23);
    }

    /** A board on hand that costs nothing is used before one that is bought for nothing. */
    @Test
    void onHandComesFirstAtEqualValue() {
        Boards boards = new Boards().item(40, 2).forSale(100, 0).onHand(85, 1);
        SearchTask task = boards.task(boards.row(0, 1, 0, 0));
        List<Answer.PatternUse> found = improve(task, 1);
        assertThat(Boards.fault(task.instance(), task.start(), found)).isEmpty();
        assertThat(found).hasSize(1);
        assertThat(found.get(0).stock()).isEqualTo(1);
    }

    /** With kerfs 30 + 10 is 20 + 20: both boards stay full when each gets one 30, one 10 and two 20. */
    @Test
    void equalBoardsAreCutEqually() {
        Boards boards = new Boards().item(29, 2).item(9, 2).item(19, 4).forSale(79, 100);
        SearchTask task = boards.task(boards.row(0, 1, 0, 0, 1, 1), boards.row(0, 1, 2, 2, 2, 2));
        List<Answer.PatternUse> found = improve(task, 1);
        assertThat(Boards.fault(task.instance(), task.start(), found)).isEmpty();
        assertThat(found).hasSize(1);
        assertThat(found.get(0).copies()).isEqualTo(2);
        assertThat(Boards.itemsOf(found.get(0))).containsExactly(0, 2, 2, 1);
    }

    @Test
    void nothingToGainKeepsTheValue() {
        Boards boards = new Boards().item(49, 4).forSale(99, 100);
        SearchTask task = boards.task(boards.row(0, 2, 0, 0));
        List<Answer.PatternUse> found = improve(task, 1);
        assertThat(found).isEqualTo(task.start());
    }

    @Test
    void aBoardWithABadZoneIsLeftAlone() {
        Boards boards = new Boards().item(40, 3).forSale(100, 100);
        StockType plain = boards.stocks.get(0);
        boards.stocks.add(new StockType(
                100, 10, 0, 0, 0, 1, 0, List.of(new StockType.ZoneRect(45, 0, 50, 10, 2, false)), plain.places()));
        boards.onHand.add(true);
        SearchTask task = boards.task(boards.row(0, 1, 0, 0), boards.row(1, 1, 0));
        assertThat(improve(task, 1)).contains(task.start().get(1));
    }

    /** No cut on less than 45: longest first would cut the last 20 from a stub of 38. */
    @Test
    void stubsAreNotCutShorterThanTheShopAllows() {
        Boards boards = new Boards().item(40, 2).item(20, 4).forSale(100, 100);
        boards.limits =
                new Instance.Limits(Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, Integer.MAX_VALUE, null, 45);
        SearchTask task = boards.task(boards.row(0, 1, 1, 1, 0), boards.row(0, 1, 1, 1, 0));
        List<Answer.PatternUse> found = improve(task, 1);
        assertThat(Boards.fault(task.instance(), task.start(), found)).isEmpty();
        for (Answer.PatternUse use : found) {
            long last = ((Region.Split) use.layout())
                    .parts().stream().mapToLong(Region::x).max().orElseThrow();
            assertThat(100 - last).as("what lies on the saw for the last cut").isGreaterThanOrEqualTo(45);
        }
    }

    /** The engine is not even built where there is nothing to choose. */
    @Test
    void oneBoardOfItsOnlyStockComesBackAtOnce() {
        Boards boards = new Boards().item(40, 2);
        boards.stock(100, 0, 0, 1, 0, true);
        SearchTask task = boards.task(boards.row(0, 1, 0, 0));
        WorkMeter meter = Boards.meter(STEPS);
        assertThat(new SearchEngine().improve(task, meter, 1)).isSameAs(task.start());
        assertThat(meter.used()).isZero();
    }

    @Test
    void sameSeedSameAnswer() {
        for (long seed = 1; seed <= 5; seed++) {
            SearchTask task = random(new Random(seed));
            List<Answer.PatternUse> first = ENGINE.improve(task, Boards.meter(10_000), seed);
            List<Answer.PatternUse> again = new SearchEngine().improve(task, Boards.meter(10_000), seed);
            assertThat(again).as("seed %d", seed).isEqualTo(first);
        }
    }

    @Test
    void neverWorseAndAlwaysValid() {
        int gained = 0;
        for (long seed = 1; seed <= 200; seed++) {
            SearchTask task = random(new Random(seed));
            List<Answer.PatternUse> found = ENGINE.improve(task, Boards.meter(6_000), seed);
            Instance instance = task.instance();
            assertThat(Boards.fault(instance, task.start(), found))
                    .as("seed %d", seed)
                    .isEmpty();
            assertThat(Boards.value(instance, found))
                    .as("value, seed %d", seed)
                    .isLessThanOrEqualTo(Boards.value(instance, task.start()));
            if (Boards.value(instance, found) < Boards.value(instance, task.start())) {
                gained++;
            }
        }
        // First fit in the order of the list leaves much to gain.
        assertThat(gained).as("plans of 200 that became cheaper").isGreaterThan(150);
    }

    /** One stock, so that of all wishes one long offcut comes first: it never gets shorter at equal value. */
    @Test
    void theLongestOffcutNeverGetsShorterAtEqualValue() {
        int gained = 0;
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            Boards boards = new Boards();
            for (int i = 0; i < 6; i++) {
                boards.item(10 + random.nextInt(30), 1 + random.nextInt(4));
            }
            boards.forSale(100, 100);
            SearchTask task = boards.task(firstFit(boards, 0).toArray(Answer.PatternUse[]::new));
            List<Answer.PatternUse> found = ENGINE.improve(task, Boards.meter(30_000), seed);
            Instance instance = task.instance();
            assertThat(Boards.fault(instance, task.start(), found))
                    .as("seed %d", seed)
                    .isEmpty();
            if (Boards.value(instance, found) == Boards.value(instance, task.start())) {
                long before = Boards.longestLeftover(instance, task.start());
                long after = Boards.longestLeftover(instance, found);
                assertThat(after).as("seed %d", seed).isGreaterThanOrEqualTo(before);
                gained += after > before ? 1 : 0;
            }
        }
        assertThat(gained).as("plans with a longer offcut").isGreaterThan(10);
    }

    @Test
    void aCancelledTaskKeepsTheStart() {
        SearchTask task = random(new Random(7));
        CancelToken cancel = new CancelToken();
        cancel.cancel();
        WorkMeter meter = new WorkMeter(STEPS, System.nanoTime() + 60_000_000_000L, cancel);
        List<Answer.PatternUse> found = ENGINE.improve(task, meter, 1);
        assertThat(Boards.fault(task.instance(), task.start(), found)).isEmpty();
        assertThat(meter.isCutShort()).isTrue();
        assertThat(meter.used()).isLessThan(1_000);
    }

    @Test
    void theWorkLimitHolds() {
        SearchTask task = random(new Random(11));
        WorkMeter meter = Boards.meter(3_000);
        ENGINE.improve(task, meter, 1);
        assertThat(meter.used()).isBetween(1L, 3_100L);
        assertThat(meter.isCutShort()).isFalse();
    }

    /** A job of 4 to 10 sizes, started by first fit in the order of the list. */
    static SearchTask random(Random random) {
        Boards boards = new Boards();
        int sizes = 4 + random.nextInt(7);
        for (int i = 0; i < sizes; i++) {
            boards.item(10 + random.nextInt(60), 1 + random.nextInt(4));
        }
        boolean waste = random.nextBoolean();
        double worth = waste ? 1 : 0;
        boards.keeps.add(new Instance.Keep(15, 5));
        boards.stock(100, random.nextInt(3), waste ? 1_000 : 100, StockType.UNLIMITED, worth, false);
        boards.stock(130, 0, waste ? 1_300 : 125, 4, worth, false);
        boards.stock(75, 2, waste ? 750 : 0, 1 + random.nextInt(2), worth, true);
        return boards.task(firstFit(boards, 2).toArray(Answer.PatternUse[]::new));
    }

    static List<Answer.PatternUse> firstFit(Boards boards, int ofSecondStock) {
        List<List<Integer>> open = new ArrayList<>();
        List<Integer> stocks = new ArrayList<>();
        List<Long> free = new ArrayList<>();
        int limited = 0;
        for (int item = 0; item < boards.items.size(); item++) {
            for (int k = 0; k < boards.items.get(item).demand(); k++) {
                long need = boards.items.get(item).length() + 1;
                int at = 0;
                while (at < open.size() && free.get(at) < need) {
                    at++;
                }
                if (at == open.size()) {
                    int stock = limited++ < ofSecondStock ? 1 : 0;
                    open.add(new ArrayList<>());
                    stocks.add(stock);
                    free.add(boards.stocks.get(stock).length() + 1);
                }
                open.get(at).add(item);
                free.set(at, free.get(at) - need);
            }
        }
        List<Answer.PatternUse> uses = new ArrayList<>();
        for (int b = 0; b < open.size(); b++) {
            int[] items = open.get(b).stream().mapToInt(Integer::intValue).toArray();
            uses.add(boards.row(stocks.get(b), 1, items));
        }
        return uses;
    }
}
