package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

class GuillotineEngineTest {

    private static WorkMeter meter(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    private static Answer solve(Instance instance, long steps) {
        return new GuillotineEngine().solve(instance, meter(steps), 1, Engine.EngineListener.NONE);
    }

    private static long totalWeight(Instance instance) {
        return instance.items().stream().mapToLong(i -> i.demand() * i.weight()).sum();
    }

    @Test
    void tinyJobsEqualTheExhaustiveSearch() {
        int seeds = Integer.getInteger("tiny.jobs", 500);
        int open = 0;
        int missed = 0;
        for (long seed = 0; seed < seeds; seed++) {
            Instance instance = TinyJobs.random(seed, 4);
            Answer answer = solve(instance, 100_000);
            Oracle oracle = new Oracle(instance);
            String at = "seed " + seed + " " + instance + " -> " + answer;
            assertThat(LayoutCheck.faults(instance, answer)).as(at).isEmpty();
            long weight = totalWeight(instance) - LayoutCheck.weightMissing(instance, answer);
            long cost = LayoutCheck.cost(instance, answer);
            boolean equal = weight == oracle.bestWeight() && cost == oracle.bestCost();
            if (answer.provedPlacement() && answer.searchedBound() == cost) {
                assertThat(equal)
                        .as("oracle: weight %d cost %d; %s", oracle.bestWeight(), oracle.bestCost(), at)
                        .isTrue();
            } else {
                // Where the order of cuts matters the engine claims nothing.
                open++;
                missed += equal ? 0 : 1;
                assertThat(weight).as(at).isLessThanOrEqualTo(oracle.bestWeight());
            }
        }
        assertThat(open).as("jobs without a claim").isLessThan(seeds / 5);
        assertThat(missed).as("missed among %d jobs without a claim", open).isLessThanOrEqualTo(open / 10);
    }

    @Test
    void theSearchAloneComesCloseToTheExhaustiveSearch() {
        int equal = 0;
        int jobs = 200;
        for (long seed = 1_000; seed < 1_000 + jobs; seed++) {
            Instance instance = TinyJobs.random(seed, 4);
            Yard yard = new Yard(new Model(instance));
            AreaBound bound = new AreaBound(yard.model);
            Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.ANY);
            TreeSearch search = new TreeSearch(yard, bound, start, seed);
            search.run(meter(100_000), 500, best -> {});
            Draft best = search.best();
            Answer answer = new Answer(
                    new RegionWriter(yard.model).uses(best),
                    Arrays.stream(best.left).boxed().toList(),
                    List.of(),
                    false,
                    Answer.NO_BOUND);
            Oracle oracle = new Oracle(instance);
            String at = "seed " + seed + " " + instance + " -> " + answer;
            assertThat(LayoutCheck.faults(instance, answer)).as(at).isEmpty();
            long weight = totalWeight(instance) - LayoutCheck.weightMissing(instance, answer);
            assertThat(weight).as(at).isLessThanOrEqualTo(oracle.bestWeight());
            if (weight == oracle.bestWeight()) {
                assertThat(best.cost()).as(at).isGreaterThanOrEqualTo(oracle.bestCost());
                equal += best.cost() == oracle.bestCost() ? 1 : 0;
            }
            int[] all = instance.items().stream().mapToInt(ItemType::demand).toArray();
            if (oracle.bestWeight() == totalWeight(instance)) {
                assertThat(bound.of(all)).as("area bound, " + at).isLessThanOrEqualTo(oracle.bestCost());
            }
        }
        assertThat(equal)
                .as("jobs of %d solved as the exhaustive search does", jobs)
                .isGreaterThan(jobs * 95 / 100);
    }

    @Test
    void middlingJobsAreSoundAndRepeatable() {
        for (long seed = 0; seed < 120; seed++) {
            Instance instance = TinyJobs.random(seed, 14);
            Answer answer = solve(instance, 10_000);
            String at = "seed " + seed + " " + instance + " -> " + answer;
            assertThat(LayoutCheck.faults(instance, answer)).as(at).isEmpty();
            long cost = LayoutCheck.cost(instance, answer);
            if (answer.searchedBound() != Answer.NO_BOUND) {
                assertThat(cost).as(at).isGreaterThanOrEqualTo(answer.searchedBound());
            }
            assertThat(dualBound(instance, answer)).as(at).isLessThanOrEqualTo(cost + 1e-6);
            assertThat(solve(instance, 10_000)).as("again, " + at).isEqualTo(answer);
        }
    }

    @Test
    void sheetJobsAreNeverWorseThanShelves() {
        for (long seed = 0; seed < 40; seed++) {
            Instance instance = SheetJobs.typical(seed, 8, 25);
            Answer answer = solve(instance, 60_000);
            assertThat(LayoutCheck.faults(instance, answer)).as("seed " + seed).isEmpty();
            assertThat(answer.unplaced()).as("seed " + seed).containsOnly(0);
            long sheets = LayoutCheck.cost(instance, answer) / 6400;
            assertThat(sheets).as("seed " + seed).isLessThanOrEqualTo(Shelves.boards(instance));
            assertThat((double) sheets).as("seed " + seed).isGreaterThanOrEqualTo(SheetJobs.sheetsByArea(instance));
        }
    }

    @Test
    void aTypicalSheetJobComesNearTheAreaBound() {
        long sheets = 0;
        double byArea = 0;
        for (long seed = 0; seed < 10; seed++) {
            Instance instance = SheetJobs.typical(seed, 25, 90);
            Answer answer = solve(instance, 300_000);
            assertThat(LayoutCheck.faults(instance, answer)).as("seed " + seed).isEmpty();
            sheets += LayoutCheck.cost(instance, answer) / 6400;
            byArea += Math.ceil(SheetJobs.sheetsByArea(instance));
        }
        assertThat((double) sheets).as("sheets of ten jobs").isLessThanOrEqualTo(1.06 * byArea);
    }

    @Test
    void theSameSeedGivesTheSameAnswer() {
        Instance instance = SheetJobs.typical(6, 25, 90);
        assertThat(solve(instance, 50_000)).isEqualTo(solve(instance, 50_000));
    }

    @Test
    void anOffcutOnTheRackIsUsedWhereItSavesASheet() {
        ItemType door = new ItemType(300, 200, 60_000, 5, 5);
        List<StockType.Placing> anyhow = List.of(new StockType.Placing(true, true, 0));
        StockType sheet = new StockType(610, 410, 0, 0, 6400, StockType.UNLIMITED, 0, List.of(), anyhow);
        StockType offcut = new StockType(310, 205, 0, 0, 0, 1, 0, List.of(), anyhow);
        Instance instance =
                new Instance(List.of(door), List.of(sheet, offcut), 4, 4, Instance.Limits.NONE, List.of(), List.of());
        Answer answer = solve(instance, 100_000);
        assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
        assertThat(LayoutCheck.cost(instance, answer)).isEqualTo(6400);
        assertThat(answer.uses()).hasSize(2);
    }

    @Test
    void keptOffcutsLieTogetherWhereTheyArePaidFor() {
        // Seven strips of 90 x 10 and nothing else from a board of 100 x 100: what is left is kept in one piece of 100
        // x 30 or more.
        ItemType strip = new ItemType(90, 10, 900, 7, 7);
        List<StockType.Placing> straight = List.of(new StockType.Placing(true, true, 0));
        StockType board = new StockType(100, 100, 0, 0, 10_000, StockType.UNLIMITED, 1.0, List.of(), straight);
        Instance instance = new Instance(
                List.of(strip),
                List.of(board),
                0,
                0,
                Instance.Limits.NONE,
                List.of(new Instance.Keep(50, 20)),
                List.of());
        long[] last = new long[1];
        Answer answer = new GuillotineEngine().solve(instance, meter(200_000), 1, (a, cost) -> last[0] = cost);
        assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
        assertThat(answer.unplaced()).containsOnly(0);
        // By hand: 7 x 900 for the strips and 10 x 10 behind the one that lies across; six lie along, 90 x 40 is kept.
        assertThat(last[0]).isEqualTo(6_400);
    }

    /** The certificate's bound by area: worth of the placed pieces less what limited boards can gain. */
    private static double dualBound(Instance instance, Answer answer) {
        double bound = 0;
        double[] density = new double[instance.items().size()];
        for (int t = 0; t < density.length; t++) {
            ItemType item = instance.items().get(t);
            bound += answer.duals().get(t) * (item.demand() - answer.unplaced().get(t));
            long width = item.width() == 0
                    ? instance.stocks().stream()
                            .mapToLong(StockType::width)
                            .min()
                            .orElse(1)
                    : item.width();
            density[t] = answer.duals().get(t) / ((item.length() + kerf(instance)) * (double) (width + kerf(instance)));
        }
        for (StockType stock : instance.stocks()) {
            if (stock.copies() != StockType.UNLIMITED) {
                double most = 0;
                for (int t = 0; t < density.length; t++) {
                    most = stock.places().get(t).somewhere() ? Math.max(most, density[t]) : most;
                }
                double area =
                        (stock.length() + instance.crosscutKerf()) * (double) (stock.width() + instance.ripKerf());
                bound -= stock.copies() * Math.max(0, most * area - stock.cost());
            }
        }
        return bound;
    }

    private static long kerf(Instance instance) {
        return Math.min(instance.crosscutKerf(), instance.ripKerf());
    }
}
