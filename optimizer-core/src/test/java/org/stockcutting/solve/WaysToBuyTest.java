package org.stockcutting.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.StockItem;

/** Ways to buy beside every quantity of every stock: what is listed, and that no purchase undercuts the bound of the way it is bought in. */
class WaysToBuyTest {

    private static final int PIECES = 14;

    private static Staircase stair(Random random, int s) {
        Job job = JobBuilder.inches("any")
                .material("pine")
                .part("any", 1, "30", "2x4")
                .board("b" + s, "2x4", "8'", "%d.%02d".formatted(2 + random.nextInt(4), random.nextInt(100)))
                .build();
        StockItem.ForSale board = job.forSale().get(0);
        int pack = random.nextBoolean() ? 1 : 2 + random.nextInt(5);
        List<Offer.Break> breaks = new ArrayList<>();
        BigDecimal amount = board.price().amount();
        int from = 1;
        for (int b = random.nextInt(3) + (pack == 1 ? 1 : 0); b > 0; b--) {
            from += 1 + random.nextInt(6);
            amount = amount.multiply(new BigDecimal("0.9")).setScale(2, java.math.RoundingMode.DOWN);
            breaks.add(new Offer.Break(from, amount));
        }
        return new Staircase(board.withOffer(new Offer(pack, breaks, List.of())), Goal.COST);
    }

    private static void each(int[] sizes, int at, int[] now, java.util.function.Consumer<int[]> to) {
        if (at == sizes.length) {
            to.accept(now);
            return;
        }
        for (now[at] = 0; now[at] < sizes[at]; now[at]++) {
            each(sizes, at + 1, now, to);
        }
    }

    @Test
    void listsEveryWayThatMayBeCheaperAndNoPurchaseUndercutsItsBound() {
        int listed = 0;
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            int count = 1 + random.nextInt(3);
            List<Staircase> stairs = new ArrayList<>();
            List<StockType> types = new ArrayList<>();
            for (int s = 0; s < count; s++) {
                stairs.add(stair(random, s));
                types.add(new StockType(
                        100, 1, 0, 0, stairs.get(s).least(PIECES), StockType.UNLIMITED, 0, List.of(), List.of()));
            }
            WaysToBuy ways = new WaysToBuy(stairs, types, PIECES);
            long lower = random.nextInt(4_000);
            long paid = lower + random.nextInt(2_000);
            WaysToBuy.Promising promising = ways.below(lower, paid);
            assertThat(promising.all()).isTrue();
            TreeSet<String> found = new TreeSet<>();
            promising.combinations().forEach(c -> found.add(Arrays.toString(c)));
            assertThat(found).hasSameSizeAs(promising.combinations());
            TreeSet<String> right = new TreeSet<>();
            int[] sizes =
                    stairs.stream().mapToInt(stair -> stair.ways(PIECES).size()).toArray();
            each(sizes, 0, new int[count], c -> {
                if (ways.bound(c, lower) < paid) {
                    right.add(Arrays.toString(c));
                }
            });
            assertThat(found).as("seed %d", seed).isEqualTo(right);
            listed += found.size();
            // Every purchase that is worth at least the lower bound at the least prices.
            int[] quantities = new int[count];
            Arrays.fill(quantities, PIECES + 1);
            each(quantities, 0, new int[count], used -> {
                long worth = 0;
                long cost = 0;
                for (int s = 0; s < used.length; s++) {
                    worth += used[s] * types.get(s).cost();
                    cost += stairs.get(s).paid(used[s]);
                }
                if (worth >= lower) {
                    assertThat(ways.bound(ways.taken(used), lower)).isLessThanOrEqualTo(cost);
                }
            });
        }
        assertThat(listed).isGreaterThan(1_000);
    }
}
