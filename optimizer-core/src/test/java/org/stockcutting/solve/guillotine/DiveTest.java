package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** What a dive fixes keeps to demand and stock, and what is made of it can be cut: judged by a checker of its own. */
class DiveTest {

    private static WorkMeter meter(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 60_000_000_000L, new CancelToken());
    }

    private static Instance limited(Instance instance, int copies) {
        StockType sheet = instance.stocks().get(0);
        StockType few =
                new StockType(sheet.length(), sheet.width(), 0, 0, sheet.cost(), copies, 0, List.of(), sheet.places());
        return new Instance(instance.items(), List.of(few), 2, 2, Instance.Limits.NONE, List.of(), List.of());
    }

    private static Draft dive(Yard yard, WorkMeter meter, long cap) {
        Dive dive = new Dive(yard, 1);
        dive.learn(new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL));
        return dive.run(meter, cap);
    }

    private static void assertSound(Instance instance, Draft draft) {
        Answer answer = new Answers(new AreaBound(draft.yard.model)).interim(draft);
        assertThat(LayoutCheck.faults(instance, answer)).isEmpty();
        assertThat(Arrays.stream(draft.left).min().orElse(0)).isNotNegative();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void boardsHoldNoMoreThanIsWanted(long seed) {
        Instance instance = SheetJobs.typical(seed, 8, 60);
        Yard yard = new Yard(new Model(instance));
        Draft draft = dive(yard, meter(1_500_000), 6400L * (long) SheetJobs.sheetsByArea(instance) + 6400);
        assertThat(draft.boards).as("seed %d", seed).isNotEmpty();
        assertSound(instance, draft);
    }

    @Test
    void takesNoMoreBoardsThanThereAre() {
        Instance instance = limited(SheetJobs.typical(3, 8, 60), 2);
        Yard yard = new Yard(new Model(instance));
        Draft draft = dive(yard, meter(1_500_000), 6400L * 2);
        assertThat(draft.boards).hasSizeLessThanOrEqualTo(2);
        assertSound(instance, draft);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void patternsHeedWhatIsMissingAndAreWorthNoMoreThanTheExactMost(long seed) {
        Instance instance = SheetJobs.typical(seed, 8, 24);
        Model model = new Model(instance);
        Yard yard = new Yard(model);
        double[] worth = new double[model.types];
        Arrays.setAll(worth, model::area);
        double most = new ExactPricing(model, 0).price(worth).value();
        Draft rest = new Draft(yard);
        List<PriceList.Column> found = new ProperPricing(yard).price(worth, rest, meter(2_000_000));
        assertThat(found).as("seed %d", seed).hasSize(1);
        assertThat(RestProgramme.isWithin(found.get(0), rest.left)).isTrue();
        assertThat(PriceList.worth(found.get(0), worth)).isPositive().isLessThanOrEqualTo(most * (1 + 1e-9));
    }

    @Test
    void aDraftIsCompletedAtLowerCostOrTheBestStays() {
        Instance instance = SheetJobs.typical(2, 10, 60);
        Yard yard = new Yard(new Model(instance));
        AreaBound bound = new AreaBound(yard.model);
        Draft start = new Filling(yard).build(Filling.Order.WIDTH, Filling.BEST_TRIAL);
        TreeSearch search = new TreeSearch(yard, bound, start, 1);
        Draft fixed = dive(yard, meter(1_500_000), start.cost() - 6400);
        boolean gained = search.complete(fixed, 500, meter(1_000_000), better -> {});
        assertThat(search.best().cost() < start.cost()).isEqualTo(gained);
        assertThat(search.isComplete()).isTrue();
        assertSound(instance, search.best());
    }
}
