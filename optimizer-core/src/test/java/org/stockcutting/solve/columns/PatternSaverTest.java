package org.stockcutting.solve.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** Fewer patterns on the same boards. */
class PatternSaverTest {

    private static WorkMeter meter(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 60_000_000_000L, new CancelToken());
    }

    private static Answer saved(Instance instance, Answer before, long seed, long steps) {
        List<Boolean> onHand =
                instance.stocks().stream().map(stock -> stock.cost() == 0).toList();
        List<Answer.PatternUse> uses =
                new PatternSaver().improve(instance, before.uses(), onHand, true, meter(steps), seed);
        return new Answer(uses, before.unplaced(), before.duals(), before.provedPlacement(), before.searchedBound());
    }

    private static void neverLosesAnything(String what, Instance instance) {
        Answer before = new ColumnEngine().solve(instance, meter(1_000_000), 1, Engine.EngineListener.NONE);
        Answer after = saved(instance, before, 7, 50_000);
        long[] found = LineInspector.inspect(what, instance, before);
        long[] now = LineInspector.inspect(what, instance, after);
        assertThat(now[0]).as("%s: unplaced", what).isEqualTo(found[0]);
        assertThat(now[1]).as("%s: cost", what).isLessThanOrEqualTo(found[1]);
        assertThat(after.uses().size())
                .as("%s: patterns", what)
                .isLessThanOrEqualTo(before.uses().size());
        assertThat(saved(instance, before, 7, 50_000)).as("%s: again", what).isEqualTo(after);
    }

    @Test
    void neverDearerNeverMorePatternsAndAlwaysTheSame() {
        for (long seed = 50_000; seed < 50_200; seed++) {
            TinyLines lines = new TinyLines(seed, 24, 4);
            Instance instance = switch ((int) (seed % 4)) {
                case 0 -> lines.plain();
                case 1 -> lines.withMinimumPiece();
                case 2 -> lines.withOffcuts();
                default -> lines.withGroup();
            };
            neverLosesAnything("seed " + seed, instance);
        }
    }

    @Test
    void cutsTwoBoardsAlikeWhereTheirPiecesAllow() {
        // The pieces 5, 5, 3, 3, 2, 2 lie on two boards of 10 in two ways.
        List<ItemType> items =
                List.of(new ItemType(5, 0, 5, 2, 2), new ItemType(3, 0, 3, 2, 2), new ItemType(2, 0, 2, 2, 2));
        StockType.Placing place = new StockType.Placing(true, false, 0);
        StockType stock =
                new StockType(10, 1, 0, 0, 5, StockType.UNLIMITED, 0, List.of(), List.of(place, place, place));
        Instance instance = new Instance(items, List.of(stock), 0, 0, Instance.Limits.NONE, List.of(), List.of());
        List<Answer.PatternUse> start = List.of(
                new Answer.PatternUse(0, 1, row(items, 0, 0)), new Answer.PatternUse(0, 1, row(items, 1, 1, 2, 2)));
        List<Answer.PatternUse> uses =
                new PatternSaver().improve(instance, start, List.of(false), true, meter(100_000), 1);
        assertThat(uses).singleElement().satisfies(use -> {
            assertThat(use.copies()).isEqualTo(2);
            assertThat(use.layout()).isEqualTo(row(items, 0, 1, 2));
        });
    }

    private static Region row(List<ItemType> items, int... pieces) {
        List<Region> parts = new ArrayList<>();
        long x = 0;
        for (int piece : pieces) {
            parts.add(new Region.Item(piece, false, x, 0, items.get(piece).length(), 1));
            x += items.get(piece).length();
        }
        return new Region.Split(true, 0, 0, 10, 1, parts);
    }

    /** 20 to 60 sizes, 2 to 24 of each, three lengths at prices close to their length: the runs of a small shop, by a rule of our own. */
    private static Instance run(long seed) {
        Random random = new Random(seed);
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        int sizes = 20 + random.nextInt(41);
        for (int i = 0; i < sizes; i++) {
            int demand = 2 * (1 + random.nextInt(12));
            int length = 64 + random.nextInt(496);
            items.add(new ItemType(length, 0, length, demand, demand));
            places.add(new StockType.Placing(true, false, 0));
        }
        List<StockType> stocks = List.of(
                new StockType(762, 1, 2, 0, 398, StockType.UNLIMITED, 0, List.of(), places),
                new StockType(954, 1, 2, 0, 512, StockType.UNLIMITED, 0, List.of(), places),
                new StockType(1146, 1, 2, 0, 595, StockType.UNLIMITED, 0, List.of(), places));
        return new Instance(items, stocks, 1, 1, Instance.Limits.NONE, List.of(), List.of());
    }

    /** No source tells how few patterns there could be; the share is what was measured, with room to spare. */
    @Test
    void runsOfAShopNeedATenthFewerPatterns() {
        int before = 0;
        int after = 0;
        for (long seed = 1; seed <= 3; seed++) {
            Instance instance = run(seed);
            Answer first = new ColumnEngine().solve(instance, meter(150_000), 1, Engine.EngineListener.NONE);
            Answer fewer = saved(instance, first, 1, 300_000);
            assertThat(LineInspector.inspect("run " + seed, instance, fewer))
                    .isEqualTo(LineInspector.inspect("run " + seed, instance, first));
            before += first.uses().size();
            after += fewer.uses().size();
        }
        assertThat(after).as("patterns, %d before", before).isLessThanOrEqualTo(before * 9 / 10);
    }
}
