package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

class PurchaseBoundTest {

    private static WorkMeter meter() {
        return new WorkMeter(5_000_000, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    /** Two sheets at odd prices, some of them limited, perhaps a free one. */
    private static Instance random(long seed) {
        Random random = new Random(seed);
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        for (int t = 1 + random.nextInt(3); t > 0; t--) {
            int many = 1 + random.nextInt(2);
            items.add(new ItemType(2 + random.nextInt(5), 2 + random.nextInt(4), 1, many, many));
            places.add(new StockType.Placing(true, random.nextBoolean(), 0));
        }
        List<StockType> stocks = new ArrayList<>();
        for (int s = 0; s < 2; s++) {
            int copies = random.nextBoolean() ? StockType.UNLIMITED : 1 + random.nextInt(2);
            stocks.add(new StockType(
                    6 + random.nextInt(4),
                    5 + random.nextInt(3),
                    0,
                    0,
                    20 + random.nextInt(30),
                    copies,
                    0,
                    List.of(),
                    places));
        }
        if (random.nextInt(4) == 0) {
            stocks.add(new StockType(6, 4, 0, 0, 0, 1, 0, List.of(), places));
        }
        int kerf = random.nextInt(2);
        long fence = random.nextBoolean() ? Long.MAX_VALUE : 1 + random.nextInt(3);
        Instance.Limits limits = new Instance.Limits(
                fence,
                Long.MAX_VALUE,
                random.nextBoolean() ? Long.MAX_VALUE : 4 + random.nextInt(4),
                Integer.MAX_VALUE,
                null,
                0);
        return new Instance(items, stocks, kerf, kerf, limits, List.of(), List.of());
    }

    @Test
    void neverAboveTheOptimumAndOftenAboveTheProgramme() {
        int jobs = 0;
        int higher = 0;
        int met = 0;
        for (long seed = 0; jobs < 300; seed++) {
            Instance instance = random(seed);
            Oracle oracle = new Oracle(instance);
            long weight = instance.items().stream()
                    .mapToLong(i -> i.demand() * i.weight())
                    .sum();
            if (oracle.bestWeight() < weight) {
                continue;
            }
            jobs++;
            Model model = new Model(instance);
            int[] all = instance.items().stream().mapToInt(ItemType::demand).toArray();
            AreaBound area = new AreaBound(model);
            ColumnBound columns = new ColumnBound(model, all, area.duals(all), area.costUnit());
            columns.run(meter(), Long.MAX_VALUE);
            // The optimum must not stop it: a plan that costs more is known.
            long known = 1 + 2 * oracle.bestCost();
            assertThat(PurchaseRows.suits(model, known)).isTrue();
            PurchaseRows purchases = new PurchaseRows(model, all);
            columns.tell(purchases);
            PurchaseBound whole = new PurchaseBound(model, all, columns, purchases);
            whole.run(meter(), known);
            String at = "seed " + seed + " " + instance;
            long bound = purchases.bound(known);
            assertThat(bound).as(at).isLessThanOrEqualTo(oracle.bestCost());
            assertThat(bound).as(at).isGreaterThanOrEqualTo((long) Math.ceil(columns.value() - 1e-6));
            higher += bound > columns.raised() ? 1 : 0;
            met += bound == oracle.bestCost() ? 1 : 0;
            for (int[] counts : purchases.within(known)) {
                assertThat(purchases.cost(counts)).isLessThanOrEqualTo(known);
            }
            PurchaseRows fewer = new PurchaseRows(model, all);
            columns.tell(fewer);
            purchases.needed(known).forEach(row -> fewer.add(worth(row), most(model, row)));
            assertThat(fewer.bound(known)).as("by the rows needed, " + at).isEqualTo(bound);
        }
        assertThat(higher).as("above the programme").isGreaterThan(100);
        assertThat(met).as("equal to the optimum").isGreaterThan(200);
    }

    private static double[] worth(List<Double> row) {
        return row.stream().mapToDouble(d -> d).toArray();
    }

    private static double[] most(Model model, List<Double> row) {
        double[] most = new double[model.stocks];
        Arrays.setAll(most, s -> new ExactPricing(model, s).price(worth(row)).value());
        return most;
    }

    /** By hand: pieces 6 x 6, one on each sheet 10 x 10 at 100, four on the only one of 13 x 13 at 300: five pieces cost 400. */
    @Test
    void oneLargeSheetIsLeft() {
        List<StockType.Placing> places = List.of(new StockType.Placing(true, true, 0));
        StockType small = new StockType(10, 10, 0, 0, 100, StockType.UNLIMITED, 0, List.of(), places);
        StockType large = new StockType(13, 13, 0, 0, 300, 1, 0, List.of(), places);
        Instance instance = new Instance(
                List.of(new ItemType(6, 6, 36, 5, 5)),
                List.of(small, large),
                1,
                1,
                Instance.Limits.NONE,
                List.of(),
                List.of());
        Model model = new Model(instance);
        PurchaseRows purchases = new PurchaseRows(model, new int[] {5});
        purchases.add(new double[] {1}, new double[] {1, 4});
        assertThat(purchases.least(1_000)).containsExactly(1, 1);
        assertThat(purchases.bound(1_000)).isEqualTo(400);
        assertThat(purchases.least(399)).isNull();
        assertThat(purchases.bound(350)).isEqualTo(350);
        // Five small ones would do too, with nothing to spare.
        assertThat(purchases.within(500))
                .singleElement()
                .satisfies(counts -> assertThat(counts).containsExactly(2, 1));
    }
}
