package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

class StripSearchTest {

    private static final long SHEET = 6400;

    private static WorkMeter meter(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    /** The random job with no zones and no sets, and these stages beside its other limits. */
    private static Instance inStages(Instance job, int stages) {
        List<StockType> stocks = job.stocks().stream()
                .map(s -> new StockType(
                        s.length(),
                        s.width(),
                        s.rawEnd(),
                        s.rawFarEdge(),
                        s.cost(),
                        s.copies(),
                        0,
                        List.of(),
                        s.places()))
                .toList();
        Instance.Limits old = job.limits();
        Instance.Limits limits = new Instance.Limits(
                old.ripCapacity(),
                old.longestRip(),
                old.crosscutCapacity(),
                stages,
                old.firstCut(),
                old.minimumPiece());
        return new Instance(job.items(), stocks, job.crosscutKerf(), job.ripKerf(), limits, job.keep(), List.of());
    }

    private static boolean onlyStages(Instance instance) {
        Instance.Limits limits = instance.limits();
        return limits.equals(new Instance.Limits(
                Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, limits.stages(), limits.firstCut(), 0));
    }

    private static Answer answer(Draft draft) {
        return new Answer(
                new RegionWriter(draft.yard.model).uses(draft),
                Arrays.stream(draft.left).boxed().toList(),
                List.of(),
                false,
                Answer.NO_BOUND);
    }

    private static long totalWeight(Instance instance) {
        return instance.items().stream().mapToLong(i -> i.demand() * i.weight()).sum();
    }

    /** Strips alone, without the search that follows them: sound on every job, best on nearly all, and never a bound that is too high. */
    @Test
    void tinyJobsInTwoAndThreeStagesHeldAgainstTheExhaustiveSearch() {
        int jobs = 400;
        int equal = 0;
        int plain = 0;
        int plainEqual = 0;
        int bounds = 0;
        int tight = 0;
        for (long seed = 0; seed < jobs; seed++) {
            Instance instance = inStages(TinyJobs.random(seed, 5), 2 + (int) (seed % 2));
            Yard yard = new Yard(new Model(instance));
            Oracle oracle = new Oracle(instance);
            for (StripSearch strips : StripSearch.of(yard, new AreaBound(yard.model), seed)) {
                strips.run(new Draft(yard), 0, meter(60_000));
                Answer answer = answer(strips.best());
                String at = "seed " + seed + " " + instance + " -> " + answer;
                assertThat(LayoutCheck.faults(instance, answer)).as(at).isEmpty();
                long weight = totalWeight(instance) - LayoutCheck.weightMissing(instance, answer);
                long cost = LayoutCheck.cost(instance, answer);
                assertThat(weight).as(at).isLessThanOrEqualTo(oracle.bestWeight());
                boolean best = weight == oracle.bestWeight() && cost == oracle.bestCost();
                equal += best ? 1 : 0;
                if (onlyStages(instance) && oracle.bestWeight() == totalWeight(instance)) {
                    plain++;
                    plainEqual += best ? 1 : 0;
                }
                if (strips.bound() != Answer.NO_BOUND && oracle.bestWeight() == totalWeight(instance)) {
                    bounds++;
                    tight += strips.bound() == oracle.bestCost() ? 1 : 0;
                    assertThat(strips.bound()).as(at).isLessThanOrEqualTo(oracle.bestCost());
                }
            }
        }
        // Pricing leaves the other limits out, and boards that are too few for all pieces.
        assertThat(equal).as("as good as the exhaustive search").isGreaterThan(jobs * 85 / 100);
        assertThat(plain).as("jobs without other limits, where all has a place").isGreaterThan(jobs / 4);
        assertThat(plainEqual).as("as good among %d of them", plain).isGreaterThan(plain * 97 / 100);
        assertThat(bounds).as("bounds").isGreaterThan(jobs / 3);
        assertThat(tight).as("tight bounds").isGreaterThan(bounds / 3);
    }

    /** The bound of the programme is that of strips: two stages cost more than three here, and the plan meets what strips allow. */
    @Test
    void aShopJobInThreeStagesMeetsTheBoundOfItsStages() {
        Instance instance = inStages(SheetJobs.typical(0, 20, 100), 3);
        Answer three = new GuillotineEngine().solve(instance, meter(1_500_000), 1, Engine.EngineListener.NONE);
        assertThat(LayoutCheck.faults(instance, three)).isEmpty();
        assertThat(three.searchedBound()).isEqualTo(9 * SHEET);
        assertThat(LayoutCheck.cost(instance, three)).isEqualTo(9 * SHEET);

        Instance stricter = inStages(SheetJobs.typical(0, 20, 100), 2);
        Answer two = new GuillotineEngine().solve(stricter, meter(1_500_000), 1, Engine.EngineListener.NONE);
        assertThat(LayoutCheck.faults(stricter, two)).isEmpty();
        assertThat(two.searchedBound()).isGreaterThan(three.searchedBound());
        assertThat(LayoutCheck.cost(stricter, two)).isGreaterThanOrEqualTo(two.searchedBound());
    }

    /** The bound says that one sheet less may do than pieces cut down from the best patterns of all make. */
    @Test
    void aSheetIsSavedWherePatternsKeepToWhatIsLeft() {
        for (long seed : new long[] {4, 7, 11}) {
            Instance instance = inStages(SheetJobs.typical(seed, 20, 100), 3);
            Yard yard = new Yard(new Model(instance));
            for (StripSearch strips : StripSearch.of(yard, new AreaBound(yard.model), 1)) {
                strips.run(new Draft(yard), 0, meter(1_000_000));
                Answer answer = answer(strips.best());
                assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
                assertThat(strips.best().left).containsOnly(0);
                assertThat(strips.best().cost()).as("seed " + seed).isEqualTo(strips.bound());
            }
        }
    }

    @Test
    void sameSeedSameBoards() {
        Instance instance = inStages(SheetJobs.typical(3, 20, 100), 3);
        Answer one = new GuillotineEngine().solve(instance, meter(700_000), 5, Engine.EngineListener.NONE);
        Answer other = new GuillotineEngine().solve(instance, meter(700_000), 5, Engine.EngineListener.NONE);
        assertThat(other).isEqualTo(one);
    }
}
