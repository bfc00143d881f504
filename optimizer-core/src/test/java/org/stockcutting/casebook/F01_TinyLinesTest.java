package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Price;
import org.stockcutting.stock.PriceUnit;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/**
 * F: 2,000 tiny jobs of crosscut boards (several lengths, limited stock, offcuts, bad zones, kerf, trims) against an oracle that tries
 * every order of pieces on every board and every number of boards: the same wood placed, then the same money.
 */
class F01_TinyLinesTest {

    private static final int JOBS = 2_000;

    /** A board as the oracle sees it, millimetres, usable coordinates; a zone is from, to and how many classes refuse it. */
    private record Line(int usable, int[][] zones, long cents, int copies) {}

    /** A job twice: as the library reads it and as the oracle does. */
    private record Tiny(Job job, int[] lengths, int[] demand, int[] classes, int kerf, List<Line> lines) {}

    @Test
    void everyTinyJobIsSolvedAsWellAsCanBe() {
        Optimizer optimizer = new Optimizer();
        for (long seed = 1; seed <= JOBS; seed++) {
            Tiny tiny = tiny(seed);
            CuttingPlan plan = optimizer.plan(tiny.job());
            long[] best = best(tiny);
            assertThat(placedLength(plan))
                    .as("millimetres placed, seed %d", seed)
                    .isEqualTo(best[0]);
            assertThat(plan.objective().value().longValueExact())
                    .as("cents, seed %d", seed)
                    .isEqualTo(best[1]);
            assertThat(plan.objective().bound().longValueExact())
                    .as("bound, seed %d", seed)
                    .isLessThanOrEqualTo(best[1]);
        }
    }

    private static long placedLength(CuttingPlan plan) {
        long sum = 0;
        for (Layout layout : plan.layouts()) {
            for (PlacedPiece piece : layout.pieces()) {
                sum += layout.repeat() * piece.length().nanometres() / 1_000_000;
            }
        }
        return sum;
    }

    private static Tiny tiny(long seed) {
        Random random = new Random(seed);
        int kerf = random.nextInt(3);
        int start = random.nextInt(3);
        int end = random.nextInt(3);
        JobBuilder builder = JobBuilder.millimetres("tiny " + seed).shop(shop(kerf, start, end));
        int types = 1 + random.nextInt(3);
        int[] lengths = new int[types];
        int[] demand = new int[types];
        int[] classes = new int[types];
        for (int t = 0; t < types; t++) {
            lengths[t] = 3 + random.nextInt(12);
            demand[t] = 1 + random.nextInt(3);
            classes[t] = random.nextInt(3);
            builder.part(new Part(
                    "p" + t,
                    demand[t],
                    mm(lengths[t]),
                    new Section.Measured(mm(10), mm(10)),
                    "wood",
                    null,
                    WoodClass.values()[classes[t]],
                    0,
                    new Making.AsCut(),
                    null,
                    null));
        }
        List<Line> lines = new ArrayList<>();
        int stocks = 1 + random.nextInt(3);
        for (int s = 0; s < stocks; s++) {
            int length = 12 + random.nextInt(22);
            int cents = 1 + random.nextInt(40);
            Integer copies = random.nextInt(3) == 0 ? Integer.valueOf(1 + random.nextInt(2)) : null;
            builder.stock(new StockItem.ForSale(
                    "s" + s,
                    Form.BOARD,
                    null,
                    mm(length),
                    mm(10),
                    mm(10),
                    "wood",
                    Grain.LENGTH,
                    null,
                    copies,
                    new Price(
                            java.math.BigDecimal.valueOf(cents, 2),
                            java.util.Currency.getInstance("EUR"),
                            PriceUnit.PIECE)));
            lines.add(new Line(length - start - end, new int[0][], cents, copies == null ? 99 : copies));
        }
        int owned = random.nextInt(3);
        for (int o = 0; o < owned; o++) {
            lines.add(owned(builder, random, "o" + o, start, end));
        }
        return new Tiny(builder.build(), lengths, demand, classes, kerf, lines);
    }

    private static Line owned(JobBuilder builder, Random random, String id, int start, int end) {
        int length = 8 + random.nextInt(20);
        boolean sawn = random.nextBoolean();
        int from = sawn ? 0 : start;
        int to = sawn ? length : length - end;
        List<Zone> zones = new ArrayList<>();
        List<int[]> seen = new ArrayList<>();
        for (int z = random.nextInt(3); z > 0; z--) {
            int x = random.nextInt(length - 2);
            int x1 = Math.min(length, x + 1 + random.nextInt(3));
            int severity = random.nextInt(3);
            zones.add(new Zone(mm(x), mm(x1), null, null, Zone.Severity.values()[severity], Zone.Face.BOTH, false));
            seen.add(new int[] {x - from, x1 - from, severity});
        }
        builder.stock(new StockItem.OnHand(
                id,
                Form.BOARD,
                null,
                mm(length),
                mm(10),
                mm(10),
                "wood",
                Grain.LENGTH,
                sawn ? new Trim(mm(0), mm(0), null, null) : null,
                1,
                zones));
        return new Line(to - from, seen.toArray(int[][]::new), 0, 1);
    }

    private static ShopRules shop(int kerf, int start, int end) {
        ShopRules plain = ShopRules.defaults();
        return new ShopRules(
                new Kerf(mm(kerf), mm(kerf)),
                new Trim(mm(start), mm(end), null, null),
                plain.sheetTrim(),
                plain.limits(),
                plain.keepOffcuts(),
                plain.thicknessTolerance(),
                plain.maxPlaning(),
                null);
    }

    private static Length mm(int count) {
        return Length.ofNanometres(1_000_000L * count);
    }

    /** Most millimetres placed, and the least cents for them. */
    private static long[] best(Tiny tiny) {
        Map<List<Integer>, Long> cheapest = new HashMap<>();
        cheapest.put(zeros(tiny.demand().length), 0L);
        for (Line line : tiny.lines()) {
            Set<List<Integer>> patterns = new HashSet<>();
            collect(tiny, line, 0, new int[tiny.demand().length], patterns);
            int most = Arrays.stream(tiny.demand()).sum();
            for (int copy = 0; copy < Math.min(line.copies(), most); copy++) {
                Map<List<Integer>, Long> next = new HashMap<>(cheapest);
                cheapest.forEach((state, cost) -> patterns.forEach(
                        pattern -> next.merge(sum(state, pattern, tiny.demand()), cost + line.cents(), Math::min)));
                cheapest = next;
            }
        }
        long[] best = {-1, 0};
        cheapest.forEach((state, cost) -> {
            long placed = 0;
            for (int t = 0; t < state.size(); t++) {
                placed += (long) state.get(t) * tiny.lengths()[t];
            }
            if (placed > best[0] || (placed == best[0] && cost < best[1])) {
                best[0] = placed;
                best[1] = cost;
            }
        });
        return best;
    }

    /** Every set of pieces that fits, pieces laid one after the other in every order, each as early as zones let it. */
    private static void collect(Tiny tiny, Line line, int from, int[] counts, Set<List<Integer>> patterns) {
        patterns.add(Arrays.stream(counts).boxed().toList());
        for (int t = 0; t < counts.length; t++) {
            int x = clear(line, from, tiny.lengths()[t], tiny.classes()[t]);
            if (counts[t] < tiny.demand()[t] && x + tiny.lengths()[t] <= line.usable()) {
                counts[t]++;
                collect(tiny, line, x + tiny.lengths()[t] + tiny.kerf(), counts, patterns);
                counts[t]--;
            }
        }
    }

    private static int clear(Line line, int from, int length, int woodClass) {
        for (int x = from; ; x++) {
            int at = x;
            if (Arrays.stream(line.zones())
                    .noneMatch(zone -> zone[2] >= woodClass && zone[0] < at + length && at < zone[1])) {
                return x;
            }
        }
    }

    private static List<Integer> zeros(int count) {
        return Arrays.stream(new int[count]).boxed().toList();
    }

    private static List<Integer> sum(List<Integer> state, List<Integer> pattern, int[] demand) {
        List<Integer> sum = new ArrayList<>();
        for (int t = 0; t < demand.length; t++) {
            sum.add(Math.min(demand[t], state.get(t) + pattern.get(t)));
        }
        return sum;
    }
}
