package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** Diving: what it fixes and refits stays within demand and cost, and the programme of the rest is no dearer than plans are. */
final class DiveTest {

    private static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    private static ColumnBound finished(Model model, Draft start) {
        AreaBound area = new AreaBound(model);
        int[] placed = Answers.placed(start);
        ColumnBound bound = new ColumnBound(model, placed, area.duals(placed), area.costUnit());
        bound.run(steps(3_000_000), Long.MAX_VALUE);
        return bound;
    }

    @Test
    void reachesThePlanThatTheBoundDoesNotRuleOut() {
        for (long seed = 0; seed < 3; seed++) {
            Instance instance = SheetJobs.typical(seed, 12, 60);
            Yard yard = new Yard(new Model(instance));
            Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL);
            ColumnBound bound = finished(yard.model, start);
            double[] missing = new double[yard.model.types];
            Arrays.setAll(missing, yard.model::area);
            // One sheet of room above the bound: a dive that misses that is no good.
            long cost = bound.raised() + yard.model.stock(0).cost();
            Allowance within = Allowance.of(yard.model, cost);
            Draft found = new Dive(yard, bound, missing, seed).run(steps(6_000_000), within);
            assertThat(found).as("seed " + seed).isNotNull();
            if (found != null) {
                assertThat(found.cost()).isBetween(bound.raised(), cost);
                assertThat(found.left).containsOnly(0);
                assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(found)))
                        .isEmpty();
            }
        }
    }

    /** What is to spare decides, so dives that fail leave more of it to the next ones: the programme of all pieces gets cheaper. */
    @Test
    void eachDiveHasMoreRoomThanThoseThatFailed() {
        double gained = 0;
        for (long seed = 0; seed < 4; seed++) {
            Yard yard = new Yard(new Model(SheetJobs.typical(seed, 16, 80)));
            Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL);
            ColumnBound bound = finished(yard.model, start);
            double[] missing = new double[yard.model.types];
            Arrays.setAll(missing, yard.model::area);
            // No plan costs less than the bound, so that every dive fails.
            Allowance within = Allowance.of(yard.model, bound.raised() - 1);
            Dive dive = new Dive(yard, bound, missing, seed);
            double last = Double.POSITIVE_INFINITY;
            double first = 0;
            for (int n = 0; n < 4; n++) {
                assertThat(dive.run(steps(3_000_000), within)).isNull();
                assertThat(dive.root()).isBetween(bound.value(), last + 1e-6);
                last = dive.root();
                first = n == 0 ? last : first;
            }
            gained += (first - last) / yard.model.stock(0).cost();
        }
        assertThat(gained).isGreaterThan(0.01);
    }

    @Test
    void aBoardIsRefittedWithinWhatMayBeCutAndNeverAboveExactPricing() {
        for (long seed = 0; seed < 5; seed++) {
            Yard yard = new Yard(new Model(SheetJobs.typical(seed, 8, 40)));
            Model model = yard.model;
            double[] worths = new double[model.types];
            Arrays.setAll(worths, t -> model.area(t) * (1 + 0.05 * (t % 3)));
            int[] most = new int[model.types];
            Arrays.setAll(most, t -> 1 + t % 4);
            Board board = new Refit(model, new Dice(seed), 0.005).improved(yard.empty(0), most, worths, 300);
            for (int t = 0; t < most.length; t++) {
                assertThat(board.counts[t]).isBetween(0, most[t]);
            }
            double exact = new ExactPricing(model, 0).price(worths).value();
            assertThat(Refit.worth(board, worths)).isBetween(0.6 * exact, exact);
        }
    }

    @Test
    void theProgrammeOfTheRestCostsNoMoreThanAPlanThatItsPatternsMake() {
        Yard yard = new Yard(new Model(SheetJobs.typical(1, 12, 60)));
        Draft plan = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL);
        RestProgramme programme = new RestProgramme(yard.model, new Draft(yard));
        plan.boards.forEach(board -> programme.add(PriceList.Column.of(board)));
        programme.solve();
        assertThat(programme.value()).isBetween(0.5 * plan.cost(), plan.cost() + 1e-6);

        Draft rest = new Draft(yard);
        rest.add(plan.boards.get(0));
        RestProgramme less = new RestProgramme(yard.model, rest.rest());
        plan.boards.forEach(board -> less.add(PriceList.Column.of(board)));
        less.solve();
        long left = plan.cost() - plan.boards.get(0).cost;
        assertThat(less.value()).isBetween(programme.value() - plan.boards.get(0).cost - 1e-6, left + 1e-6);
    }

    /** What may be bought changes from dive to dive: a plan takes no more of either size. */
    @Test
    void purchasesAreFilledByTurns() {
        Instance one = SheetJobs.typical(3, 12, 60);
        StockType sheet = one.stocks().get(0);
        StockType square = new StockType(960, 960, 0, 0, 5300, StockType.UNLIMITED, 0, List.of(), sheet.places());
        Instance instance = new Instance(one.items(), List.of(sheet, square), 2, 2, one.limits(), List.of(), List.of());
        Yard yard = new Yard(new Model(instance));
        Draft start = new Filling(yard).build(Filling.Order.AREA, 0);
        double[] missing = new double[yard.model.types];
        Arrays.setAll(missing, yard.model::area);
        Dive dive = new Dive(yard, finished(yard.model, start), missing, 1);
        int sheets = start.used(0);
        for (int n = 0; n < 4; n++) {
            int[] counts = n % 2 == 0 ? new int[] {sheets, 0} : new int[] {sheets - 1, 1};
            long cost = counts[0] * sheet.cost() + counts[1] * square.cost();
            Draft found = dive.run(steps(10_000_000), new Allowance(cost, counts));
            if (found != null) {
                assertThat(found.left).containsOnly(0);
                assertThat(found.used(0)).isLessThanOrEqualTo(counts[0]);
                assertThat(found.used(1)).isLessThanOrEqualTo(counts[1]);
                assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(found)))
                        .isEmpty();
            }
            assertThat(found).as("purchase " + Arrays.toString(counts)).isNotNull();
        }
    }

    @Test
    void fixedBoardsCountInTheRestButAreNotInIt() {
        Yard yard = new Yard(new Model(SheetJobs.typical(2, 12, 60)));
        Draft plan = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL);
        Draft rest = plan.rest();
        assertThat(rest.boards).isEqualTo(List.of());
        assertThat(rest.cost()).isEqualTo(plan.cost());
        assertThat(rest.left).containsOnly(0);
        assertThat(plan.boards).isNotEmpty();
    }
}
