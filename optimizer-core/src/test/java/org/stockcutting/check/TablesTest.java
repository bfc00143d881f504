package org.stockcutting.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Job;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** The quick tables against the plainest recursion there is; sizes are a few nanometres so that every place can be tried. */
class TablesTest {

    private static StockItem.ForSale sheet(int length, int width) {
        return new StockItem.ForSale(
                "s",
                Form.SHEET,
                null,
                PlanSketch.nm(length),
                PlanSketch.nm(width),
                JobSketch.in("1"),
                "oak",
                Grain.ANY,
                null,
                null,
                null);
    }

    private static Worth worth(int length, int width, long value, long cap, boolean turns) {
        Part model = JobSketch.part("p", 1, "1", "1", "1");
        Part part = new Part(
                "p",
                1,
                PlanSketch.nm(length),
                new Section.Measured(PlanSketch.nm(width), JobSketch.in("1")),
                "oak",
                Grain.ANY,
                model.woodClass(),
                0,
                model.making(),
                null,
                null);
        Job job = new JobSketch().build();
        return new Worth(Rough.of(part, job), value, cap, true, turns, length, width, width);
    }

    @Test
    void guillotineTableEqualsPlainRecursion() {
        for (long seed = 0; seed < 500; seed++) {
            Random random = new Random(seed);
            int kerfX = random.nextInt(3);
            int kerfY = random.nextInt(3);
            int length = 8 + random.nextInt(16);
            int width = 6 + random.nextInt(10);
            List<Worth> worths = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(4); i++) {
                worths.add(worth(
                        2 + random.nextInt(6), 2 + random.nextInt(5), 1 + random.nextInt(50), 9, random.nextBoolean()));
            }
            Board board = Board.of(sheet(length, width), ShopRules.defaults());
            long[][] memo = new long[length + kerfX + 1][width + kerfY + 1];
            assertThat(GuillotineTable.of(board, worths, kerf(kerfX, kerfY), SawLimits.NONE)
                            .best())
                    .as("seed " + seed)
                    .isEqualTo(plain(length + kerfX, width + kerfY, kerfX, kerfY, worths, memo));
        }
    }

    private static Kerf kerf(int crosscut, int rip) {
        return new Kerf(PlanSketch.nm(crosscut), PlanSketch.nm(rip));
    }

    /** With what saws reach: never below a recursion over real cuts, equal to it where no rip is too long. */
    @Test
    void guillotineTableWithLimitsIsNeverBelowRealCuts() {
        int lower = 0;
        for (long seed = 0; seed < 500; seed++) {
            Random random = new Random(seed);
            int kerfX = random.nextInt(3);
            int kerfY = random.nextInt(3);
            int length = 8 + random.nextInt(16);
            int width = 6 + random.nextInt(10);
            List<Worth> worths = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(4); i++) {
                worths.add(worth(
                        2 + random.nextInt(6), 2 + random.nextInt(5), 1 + random.nextInt(50), 9, random.nextBoolean()));
            }
            int fence = 1 + random.nextInt(5);
            int crosscut = 2 + random.nextInt(width);
            Integer longest = random.nextBoolean() ? null : 3 + random.nextInt(length);
            SawLimits limits = new SawLimits(
                    PlanSketch.nm(fence),
                    longest == null ? null : PlanSketch.nm(longest),
                    PlanSketch.nm(crosscut),
                    null,
                    SawLimits.FirstCut.ANY,
                    null);
            Board board = Board.of(sheet(length, width), ShopRules.defaults());
            long found = GuillotineTable.of(board, worths, kerf(kerfX, kerfY), limits)
                    .best();
            long[][] memo = new long[length + 1][width + 1];
            long real = real(length, width, kerfX, kerfY, worths, limits, memo);
            assertThat(found).as("seed " + seed).isGreaterThanOrEqualTo(real);
            if (longest == null) {
                assertThat(found).as("seed " + seed).isEqualTo(real);
            }
            lower += found
                            < GuillotineTable.of(board, worths, kerf(kerfX, kerfY), SawLimits.NONE)
                                    .best()
                    ? 1
                    : 0;
        }
        assertThat(lower).isGreaterThan(100);
    }

    /** Real extents: a rectangle is a piece, waste, or cut at any place that the saws reach. Memo holds worth + 1. */
    private static long real(int x, int y, int kerfX, int kerfY, List<Worth> worths, SawLimits limits, long[][] memo) {
        if (x <= 0 || y <= 0) {
            return 0;
        }
        if (memo[x][y] > 0) {
            return memo[x][y] - 1;
        }
        long best = 0;
        for (Worth w : worths) {
            boolean lies = w.length() == x && w.leastWidth() == y;
            boolean stands = w.turned() && w.leastWidth() == x && w.length() == y;
            best = lies || stands ? Math.max(best, w.value()) : best;
        }
        for (int i = 1; i < x && y <= reach(limits.crosscutCapacity()); i++) {
            best = Math.max(
                    best,
                    real(i, y, kerfX, kerfY, worths, limits, memo)
                            + real(x - i - kerfX, y, kerfX, kerfY, worths, limits, memo));
        }
        for (int j = 1; j < y && x <= reach(limits.longestRip()); j++) {
            if (Math.min(j, y - j - kerfY) <= reach(limits.ripCapacity())) {
                best = Math.max(
                        best,
                        real(x, j, kerfX, kerfY, worths, limits, memo)
                                + real(x, y - j - kerfY, kerfX, kerfY, worths, limits, memo));
            }
        }
        memo[x][y] = best + 1;
        return best;
    }

    private static long reach(@Nullable Length limit) {
        return limit == null ? Long.MAX_VALUE : limit.nanometres();
    }

    /** Memo holds worth + 1. */
    private static long plain(int x, int y, int kerfX, int kerfY, List<Worth> worths, long[][] memo) {
        if (memo[x][y] > 0) {
            return memo[x][y] - 1;
        }
        long best = 0;
        for (Worth w : worths) {
            boolean lies = w.length() + kerfX <= x && w.leastWidth() + kerfY <= y;
            boolean stands = w.turned() && w.leastWidth() + kerfX <= x && w.length() + kerfY <= y;
            best = lies || stands ? Math.max(best, w.value()) : best;
        }
        for (int i = 1; i < x; i++) {
            best = Math.max(
                    best, plain(i, y, kerfX, kerfY, worths, memo) + plain(x - i, y, kerfX, kerfY, worths, memo));
        }
        for (int j = 1; j < y; j++) {
            best = Math.max(
                    best, plain(x, j, kerfX, kerfY, worths, memo) + plain(x, y - j, kerfX, kerfY, worths, memo));
        }
        memo[x][y] = best + 1;
        return best;
    }

    @Test
    void knapsackEqualsPlainRecursionAndCoarserIsNeverLess() {
        for (long seed = 0; seed < 500; seed++) {
            Random random = new Random(seed);
            List<Knapsack.Item> items = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(5); i++) {
                items.add(new Knapsack.Item(1 + random.nextInt(30), random.nextInt(50), random.nextInt(5)));
            }
            int capacity = random.nextInt(100);
            long right = plain(items, 0, capacity);
            assertThat(Knapsack.solve(items, capacity).best())
                    .as("seed " + seed)
                    .isEqualTo(right);
            Knapsack coarse = Knapsack.tryGrid(items, capacity, 7);
            assertThat(coarse.best()).as("seed " + seed).isGreaterThanOrEqualTo(right);
        }
    }

    private static long plain(List<Knapsack.Item> items, int from, long capacity) {
        if (from == items.size()) {
            return 0;
        }
        long best = 0;
        Knapsack.Item item = items.get(from);
        for (long n = 0; n <= item.copies() && n * item.length() <= capacity; n++) {
            best = Math.max(best, n * item.value() + plain(items, from + 1, capacity - n * item.length()));
        }
        return best;
    }

    @Test
    void zoneWalkEqualsTryingEveryPlace() {
        for (long seed = 0; seed < 500; seed++) {
            Random random = new Random(seed);
            int size = 10 + random.nextInt(20);
            int kerf = random.nextInt(3);
            List<Zone> zones = new ArrayList<>();
            for (int i = 0; i < random.nextInt(3); i++) {
                int from = random.nextInt(size);
                zones.add(new Zone(
                        PlanSketch.nm(from),
                        PlanSketch.nm(from + 1 + random.nextInt(4)),
                        null,
                        null,
                        Zone.Severity.UNUSABLE,
                        Zone.Face.BOTH,
                        false));
            }
            StockItem.OnHand item = new StockItem.OnHand(
                    "s",
                    Form.BOARD,
                    null,
                    PlanSketch.nm(size),
                    PlanSketch.nm(4),
                    JobSketch.in("1"),
                    "oak",
                    Grain.LENGTH,
                    null,
                    1,
                    zones);
            List<Worth> worths = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(3); i++) {
                worths.add(worth(2 + random.nextInt(8), 4, 1 + random.nextInt(20), 9, false));
            }
            Board board = Board.of(item, ShopRules.defaults());
            assertThat(ZoneWalk.best(board, worths, kerf))
                    .as("seed " + seed)
                    .isEqualTo(everywhere(board, worths, kerf, 0));
        }
    }

    private static long everywhere(Board board, List<Worth> worths, int kerf, long from) {
        long best = 0;
        long[] rest = new long[(int) board.raw().x1() + 20];
        for (long at = board.raw().x1(); at >= from; at--) {
            rest[(int) at] = at < board.raw().x1() ? rest[(int) at + 1] : 0;
            for (Worth w : worths) {
                Rect place = new Rect(at, 0, at + w.length(), 4);
                boolean clear = board.usable().contains(place)
                        && board.zones().stream().noneMatch(z -> z.rect().overlaps(place));
                if (clear) {
                    rest[(int) at] = Math.max(rest[(int) at], w.value() + rest[(int) (at + w.length() + kerf)]);
                }
            }
            best = Math.max(best, rest[(int) at]);
        }
        return best;
    }
}
