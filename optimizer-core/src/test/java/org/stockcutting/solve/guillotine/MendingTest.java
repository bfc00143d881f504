package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.WorkMeter;

/** Mending: patterns that are known come together to what a draft misses, on as many boards as it has. */
final class MendingTest {

    private static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    private static Mending mending(Yard yard, long seed) {
        double[] missing = new double[yard.model.types];
        Arrays.setAll(missing, yard.model::area);
        return new Mending(yard, missing, new Dice(seed));
    }

    private static List<PriceList.Column> patterns(Draft draft) {
        return draft.boards.stream().map(PriceList.Column::of).toList();
    }

    private static Draft damaged(Draft plan, Dice dice) {
        Draft damaged = plan.copy();
        for (int b = 0; b < 3; b++) {
            damaged.replace(b, Pruning.thinned(damaged.boards.get(b), 0, 2, dice));
        }
        return damaged;
    }

    @Test
    void whatIsMissingIsFoundAmongKnownPatterns() {
        for (long seed = 0; seed < 4; seed++) {
            Yard yard = new Yard(new Model(SheetJobs.typical(seed, 20, 90)));
            Draft plan = new Filling(yard).build(Filling.Order.AREA, 0);
            assertThat(plan.left).containsOnly(0);
            Draft damaged = damaged(plan, new Dice(seed));
            // Room for nothing but the plan itself: its boards are as full as best fit makes them.
            assertThat(LastBoards.isMissing(damaged)).isTrue();
            Draft mended =
                    mending(yard, seed).mended(damaged, plan.cost(), patterns(plan), 2_000_000, steps(10_000_000));
            assertThat(mended.left).as("seed " + seed).containsOnly(0);
            assertThat(mended.cost()).isLessThanOrEqualTo(plan.cost());
            for (int s = 0; s < yard.model.stocks; s++) {
                assertThat(mended.used(s)).isLessThanOrEqualTo(damaged.used(s));
            }
            assertThat(LayoutCheck.faults(yard.model.instance, new Answers(new AreaBound(yard.model)).interim(mended)))
                    .isEmpty();
        }
    }

    @Test
    void aDraftThatCannotBeMendedMissesNoMoreThanBefore() {
        Yard yard = new Yard(new Model(SheetJobs.typical(3, 20, 90)));
        Draft plan = new Filling(yard).build(Filling.Order.AREA, 0);
        Draft few = plan.copy();
        few.remove(0);
        few.remove(0);
        long before = few.missingWeight();
        Draft mended = mending(yard, 1).mended(few, few.cost(), patterns(plan), 300_000, steps(10_000_000));
        assertThat(mended.missingWeight()).isPositive().isLessThanOrEqualTo(before);
        assertThat(mended.boards).hasSizeLessThanOrEqualTo(few.boards.size());
    }

    @Test
    void aDraftThatMissesNothingIsLeftAlone() {
        Yard yard = new Yard(new Model(SheetJobs.typical(3, 20, 90)));
        Draft plan = new Filling(yard).build(Filling.Order.AREA, 0);
        assertThat(mending(yard, 1).mended(plan, plan.cost(), List.of(), 300_000, steps(10_000_000)))
                .isSameAs(plan);
    }
}
