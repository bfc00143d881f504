package org.stockcutting.solve.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;

/** Tiny jobs against every way there is of dealing their pieces to boards. */
class ExhaustiveSearchTest {

    private static final int JOBS = 80;

    @Test
    void findsTheBestOfAllPlansForTinyJobs() {
        SearchEngine engine = new SearchEngine();
        List<String> missed = new ArrayList<>();
        for (long seed = 1; seed <= JOBS; seed++) {
            SearchTask task = tiny(new Random(seed));
            List<Answer.PatternUse> found = engine.improve(task, Boards.meter(300_000), seed);
            long[] best = new Dealer(task).best();
            if (best.length == 1) {
                assertThat(found).as("seed %d: no plan keeps the sets", seed).isEqualTo(task.start());
                continue;
            }
            assertThat(Boards.fault(task.instance(), task.start(), found))
                    .as("seed %d", seed)
                    .isEmpty();
            long[] reached = figures(task, found);
            assertThat(Arrays.compare(reached, best))
                    .as("seed %d: better than all plans?", seed)
                    .isNotNegative();
            if (!Arrays.equals(reached, best)) {
                missed.add("seed " + seed + ": " + Arrays.toString(reached) + ", best " + Arrays.toString(best));
            }
        }
        assertThat(missed).as("jobs of %d where a better plan exists", JOBS).hasSizeLessThanOrEqualTo(JOBS / 40);
    }

    /** Six pieces, each on a board of its own at the start; one shop in three has a rule that keeps a pair together. */
    private static SearchTask tiny(Random random) {
        Boards boards = new Boards();
        int[] demand = {1, 1 + random.nextInt(2), 1, 1 + random.nextInt(2)};
        for (int pieces : demand) {
            boards.item(15 + random.nextInt(45), pieces);
        }
        boards.forSale(90 + random.nextInt(20), 100);
        boards.onHand(50 + random.nextInt(40), 1);
        boards.keeps.add(new Instance.Keep(random.nextInt(15), 1));
        List<Answer.PatternUse> start = new ArrayList<>();
        if (random.nextInt(3) == 0) {
            boards.group(List.of(0, 2), List.of(1, 1));
        }
        for (int item = 0; item < demand.length; item++) {
            start.add(boards.row(0, demand[item], item));
        }
        return boards.task(start.toArray(Answer.PatternUse[]::new));
    }

    /** Value, area bought, length on bought boards, minus the longest kept leftover, ways of cutting: in this order. */
    private static long[] figures(SearchTask task, List<Answer.PatternUse> uses) {
        Instance instance = task.instance();
        long bought = 0;
        long onBought = 0;
        long longest = 0;
        TreeSet<String> patterns = new TreeSet<>();
        for (Answer.PatternUse use : uses) {
            StockType stock = instance.stocks().get(use.stock());
            List<Integer> items = Boards.itemsOf(use);
            if (!task.onHandStock().get(use.stock())) {
                bought += use.copies() * stock.length() * stock.width();
                onBought += use.copies()
                        * items.stream()
                                .mapToLong(i -> instance.items().get(i).length() + 1)
                                .sum();
            }
            long left = Boards.leftover(instance, use);
            if (left >= instance.keep().get(0).length()) {
                longest = Math.max(longest, left);
            }
            patterns.add(use.stock() + " " + items.stream().sorted().toList());
        }
        return new long[] {Boards.value(instance, uses), bought, onBought, -longest, patterns.size()};
    }

    /** Deals every piece to every board and remembers the best valid plan. */
    private static final class Dealer {
        private final SearchTask task;
        private final List<Integer> pieces = new ArrayList<>();
        private final List<List<Integer>> dealt = new ArrayList<>();
        private long[] best = {Long.MAX_VALUE};

        Dealer(SearchTask task) {
            this.task = task;
            for (Answer.PatternUse use : task.start()) {
                for (int copy = 0; copy < use.copies(); copy++) {
                    pieces.addAll(Boards.itemsOf(use));
                }
            }
            // One board on hand and four to buy: six pieces never need more at the least value.
            for (int board = 0; board < 5; board++) {
                dealt.add(new ArrayList<>());
            }
        }

        long[] best() {
            deal(0);
            return best;
        }

        private void deal(int at) {
            if (at == pieces.size()) {
                keepIfBetter();
                return;
            }
            boolean emptyTried = false;
            for (int board = 0; board < dealt.size(); board++) {
                List<Integer> items = dealt.get(board);
                // Empty boards for sale are alike.
                if (board > 0 && items.isEmpty() && emptyTried) {
                    continue;
                }
                emptyTried |= board > 0 && items.isEmpty();
                items.add(pieces.get(at));
                deal(at + 1);
                items.remove(items.size() - 1);
            }
        }

        private void keepIfBetter() {
            List<Answer.PatternUse> uses = new ArrayList<>();
            Boards boards = new Boards();
            boards.items.addAll(task.instance().items());
            boards.stocks.addAll(task.instance().stocks());
            for (int board = 0; board < dealt.size(); board++) {
                if (!dealt.get(board).isEmpty()) {
                    int[] items = dealt.get(board).stream()
                            .mapToInt(Integer::intValue)
                            .toArray();
                    uses.add(boards.row(board == 0 ? 1 : 0, 1, items));
                }
            }
            if (Boards.fault(task.instance(), task.start(), uses).isEmpty()) {
                long[] figures = figures(task, uses);
                if (Arrays.compare(figures, best) < 0) {
                    best = figures;
                }
            }
        }
    }
}
