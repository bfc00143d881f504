package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

class ScaleBoundTest {

    private static ScaleBound bound(Instance instance) {
        Model model = new Model(instance);
        int[] all = instance.items().stream().mapToInt(ItemType::demand).toArray();
        ScaleBound bound = new ScaleBound(model, all);
        bound.run(new AreaBound(model).costUnit(), new WorkMeter(1_000_000, Long.MAX_VALUE, new CancelToken()));
        return bound;
    }

    /** The definition itself, on every function of every extent up to 40: the best filling of the extent is worth no more than the whole. */
    @Test
    void everyFunctionIsDualFeasible() {
        int functions = 0;
        for (int extent = 1; extent <= 40; extent++) {
            List<Long> sizes = LongStream.rangeClosed(1, extent).boxed().toList();
            for (Scale scale : Scale.of(extent, sizes)) {
                functions++;
                long[] most = new long[extent + 1];
                for (int room = 1; room <= extent; room++) {
                    for (int size = 1; size <= room; size++) {
                        most[room] = Math.max(most[room], most[room - size] + scale.of(size));
                    }
                }
                assertThat(most[extent])
                        .as("extent %d, function %d", extent, functions)
                        .isLessThanOrEqualTo(scale.whole());
            }
        }
        assertThat(functions).isGreaterThan(1_500);
    }

    /** By hand: nine pieces over a half in one direction and over a third in the other go two to a sheet; by area three would. */
    @Test
    void largePiecesGoTwoToASheet() {
        ScaleBound bound = bound(job(new ItemType(51, 34, 1, 9, 9), 100, false));
        assertThat(bound.bound()).isEqualTo(500);
        assertThat(bound.duals().get(0)).isEqualTo(50.0);
    }

    /**
     * By hand: squares over a half go one to a sheet, turned or not. Pieces of 60 x 30 go three to a sheet upright, but with one laid
     * across four do (60 + 30 wide), so that nine need three sheets, not the four that a worth of a third would ask for.
     */
    @Test
    void whatMayTurnIsWorthItsLesserValue() {
        assertThat(bound(job(new ItemType(51, 51, 1, 9, 9), 100, true)).bound()).isEqualTo(900);
        assertThat(bound(job(new ItemType(60, 30, 1, 10, 10), 100, false)).bound())
                .isEqualTo(400);
        assertThat(bound(job(new ItemType(60, 30, 1, 10, 10), 100, true)).bound())
                .isLessThanOrEqualTo(300);
    }

    private static Instance job(ItemType item, long cost, boolean turns) {
        StockType sheet = new StockType(
                100,
                100,
                0,
                0,
                cost,
                StockType.UNLIMITED,
                0,
                List.of(),
                List.of(new StockType.Placing(true, turns, 0)));
        return new Instance(List.of(item), List.of(sheet), 0, 0, Instance.Limits.NONE, List.of(), List.of());
    }

    @Test
    void neverAboveTheOptimumOfTinyJobs() {
        int jobs = 0;
        int higher = 0;
        int tried = 0;
        for (long seed = 9_000; jobs < 400; seed++) {
            Instance instance = TinyJobs.random(seed, 5);
            Oracle oracle = new Oracle(instance);
            long weight = instance.items().stream()
                    .mapToLong(i -> i.demand() * i.weight())
                    .sum();
            if (oracle.bestWeight() < weight) {
                continue;
            }
            jobs++;
            ScaleBound bound = bound(instance);
            assertThat(bound.bound()).as("seed %d %s", seed, instance).isLessThanOrEqualTo(oracle.bestCost());
            int[] all = instance.items().stream().mapToInt(ItemType::demand).toArray();
            tried += bound.bound() > 0 ? 1 : 0;
            higher += bound.bound() > new AreaBound(new Model(instance)).of(all) ? 1 : 0;
        }
        assertThat(tried).as("bounds at all").isGreaterThan(100);
        assertThat(higher).as("bounds above area").isGreaterThan(5);
    }
}
