package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** Dives over strips: within what they may cost and what is left, from a programme that is hardly dearer than the bound. */
class StripDiveTest {

    private static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 600_000_000_000L, new CancelToken());
    }

    private static StripMaster master(Yard yard) {
        List<StripPricing> pricings = Stream.of(false, true)
                .flatMap(upright -> StripShapes.of(yard.model, 0, upright, 3).stream())
                .map(StripPricing::new)
                .toList();
        return new StripMaster(yard, pricings);
    }

    @Test
    void theProgrammeOfWhatIsLeftIsHardlyDearerThanTheBound() {
        for (long seed : new long[] {1, 4, 10}) {
            Yard yard = new Yard(new Model(SheetJobs.typical(seed, 20, 100)));
            AreaBound area = new AreaBound(yard.model);
            StripMaster master = master(yard);
            Draft none = new Draft(yard);
            double[] worths = area.duals(none.left).stream().mapToDouble(d -> d).toArray();
            master.set(none, true);
            master.generate(steps(4_000_000), worths, Long.MAX_VALUE, 1);
            double bound = master.objective();
            master.set(none, false);
            master.generate(steps(4_000_000), 1_000, 0);
            assertThat(master.objective()).as("seed " + seed).isBetween(bound * (1 - 1e-6), bound * 1.01);
            for (int c = 0; c < master.boards().size(); c++) {
                for (int t = 0; t < yard.model.types && master.value(c) > 1e-6; t++) {
                    assertThat(master.boards().get(c).counts[t])
                            .isLessThanOrEqualTo(yard.model.item(t).demand());
                }
            }
        }
    }

    @Test
    void divesStayWithinTheirCost() {
        for (long seed = 0; seed < 6; seed++) {
            Instance instance = SheetJobs.typical(seed, 12, 60);
            Yard yard = new Yard(new Model(instance));
            AreaBound area = new AreaBound(yard.model);
            StripDive dive = new StripDive(yard, area, master(yard), new Dice(seed));
            Draft none = new Draft(yard);
            dive.start(none, steps(2_000_000));
            Draft any = dive.run(none, Long.MAX_VALUE, 0, steps(2_000_000));
            assertThat(any.left).containsOnly(0);
            assertThat(any.cost()).isLessThanOrEqualTo(area.of(none.left) + 2 * area.costUnit());
            long most = any.cost() - area.costUnit();
            Draft less = dive.run(none, most, 0.2, steps(2_000_000));
            assertThat(less.cost()).isLessThanOrEqualTo(most);
            for (Draft draft : List.of(any, less)) {
                assertThat(Arrays.stream(draft.left)).allMatch(n -> n >= 0);
                assertThat(LayoutCheck.faults(instance, new Answers(area).interim(draft)))
                        .isEmpty();
            }
        }
    }
}
