package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

class ColumnBoundTest {

    private static WorkMeter meter(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    private static ColumnBound bound(Instance instance) {
        Model model = new Model(instance);
        AreaBound area = new AreaBound(model);
        int[] all = instance.items().stream().mapToInt(ItemType::demand).toArray();
        return new ColumnBound(model, all, area.duals(all), area.costUnit());
    }

    @Test
    void neverAboveTheOptimumOfTinyJobs() {
        int jobs = 0;
        int met = 0;
        int higher = 0;
        for (long seed = 5_000; jobs < 300; seed++) {
            Instance instance = TinyJobs.random(seed, 5);
            Oracle oracle = new Oracle(instance);
            long weight = instance.items().stream()
                    .mapToLong(i -> i.demand() * i.weight())
                    .sum();
            if (oracle.bestWeight() < weight) {
                continue;
            }
            jobs++;
            ColumnBound bound = bound(instance);
            // Left and taken up again until it ends by itself: the optimum must not stop it.
            for (int n = 0; n < 100_000 && !bound.isFinished(); n++) {
                bound.run(meter(1), Long.MAX_VALUE);
            }
            String at = "seed " + seed + " " + instance;
            assertThat(bound.isFinished()).as(at).isTrue();
            assertThat(bound.raised()).as(at).isLessThanOrEqualTo(oracle.bestCost());
            assertThat(bound.value()).as(at).isLessThanOrEqualTo(oracle.bestCost() + 1e-6);
            Model model = new Model(instance);
            int[] all = instance.items().stream().mapToInt(ItemType::demand).toArray();
            higher += bound.raised() > new AreaBound(model).of(all) ? 1 : 0;
            met += bound.raised() == oracle.bestCost() ? 1 : 0;
        }
        assertThat(higher).as("bounds above area").isGreaterThan(15);
        assertThat(met).as("bounds that meet the optimum").isGreaterThan(100);
    }

    /** By hand: of pieces 6 x 6 a sheet 10 x 10 holds one, by area almost three. */
    @Test
    void squaresThatFitOnce() {
        ColumnBound bound = bound(squares(StockType.UNLIMITED));
        bound.run(meter(1_000_000), Long.MAX_VALUE);
        assertThat(bound.raised()).isEqualTo(700);
        assertThat(bound.duals()).hasSize(1);
        assertThat(bound.duals().get(0)).isBetween(99.99, 100.0);
    }

    /** By hand: two free sheets take two of the seven, the others cost a sheet each. */
    @Test
    void limitedSheetsTakeWhatTheyHold() {
        ColumnBound bound = bound(squares(2));
        bound.run(meter(1_000_000), Long.MAX_VALUE);
        assertThat(bound.raised()).isEqualTo(500);
    }

    private static Instance squares(int free) {
        List<StockType.Placing> places = List.of(new StockType.Placing(true, true, 0));
        StockType sheet = new StockType(10, 10, 0, 0, 100, StockType.UNLIMITED, 0, List.of(), places);
        StockType rack = new StockType(10, 10, 0, 0, 0, free, 0, List.of(), places);
        return new Instance(
                List.of(new ItemType(6, 6, 36, 7, 7)),
                free == StockType.UNLIMITED ? List.of(sheet) : List.of(sheet, rack),
                0,
                0,
                Instance.Limits.NONE,
                List.of(),
                List.of());
    }

    @Test
    void aSheetJobThatAreaCannotProve() {
        Instance instance = SheetJobs.typical(1, 20, 100);
        Answer answer = new GuillotineEngine().solve(instance, meter(3_000_000), 1, Engine.EngineListener.NONE);
        assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
        assertThat(LayoutCheck.cost(instance, answer)).isEqualTo(answer.searchedBound());
        assertThat(new GuillotineEngine().solve(instance, meter(3_000_000), 1, Engine.EngineListener.NONE))
                .isEqualTo(answer);
    }
}
