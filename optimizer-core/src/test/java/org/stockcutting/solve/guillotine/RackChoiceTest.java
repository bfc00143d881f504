package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/** Drafts of which something is missing, on boards that are known to give everything, with patterns of other drafts. */
class RackChoiceTest {

    private static final long LIMIT = 600_000_000_000L;

    private static WorkMeter steps(long steps) {
        return new WorkMeter(steps, System.nanoTime() + LIMIT, new CancelToken());
    }

    @Test
    void whatIsMissingGetsLessOnTheSameBoards() {
        double before = 0;
        double after = 0;
        for (long seed = 0; seed < 6; seed++) {
            Instance instance = Racks.onHand(Racks.enough(seed, 20, 8));
            Yard yard = new Yard(new Model(instance));
            double[] missing = new double[yard.model.types];
            Arrays.setAll(missing, yard.model::area);
            List<PriceList.Column> patterns = new ArrayList<>();
            Draft start = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.RIP);
            for (Filling.Order order : Filling.Order.values()) {
                Draft other = new Filling(yard).build(order, Filling.BEST_TRIAL, RootCut.CROSSCUT);
                other.boards.forEach(board -> patterns.add(PriceList.Column.of(board)));
            }
            int[] all = new int[yard.model.stocks];
            Arrays.fill(all, 1);
            RackAim aim = RackAim.from(yard.model, 0, all);
            assertThat(aim.isMissing(start)).isTrue();
            RackDive.Kit kit = new RackDive.Kit(yard, missing, new Dice(seed), column -> {});
            RackDive dive = new RackDive(kit, aim, patterns, false, 0);
            Draft chosen = RackChoice.improved(kit, dive, start, aim, steps(100_000));
            assertThat(chosen.missingWeight()).as("seed " + seed).isLessThanOrEqualTo(start.missingWeight());
            assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(chosen)))
                    .isEmpty();
            before += start.missingWeight() / (double) weight(instance);
            after += chosen.missingWeight() / (double) weight(instance);
        }
        assertThat(after).isLessThan(0.7 * before);
    }

    /** Where every board costs something, boards that are not in the draft come in only as far as the money goes. */
    @Test
    void noMoreIsSpentThanAllowed() {
        Instance instance = Racks.enough(2, 6, 5);
        Yard yard = new Yard(new Model(instance));
        Draft start = new Draft(yard);
        double[] missing = new double[yard.model.types];
        Arrays.setAll(missing, yard.model::area);
        RackAim aim = RackAim.within(yard.model, 0);
        RackDive.Kit kit = new RackDive.Kit(yard, missing, new Dice(1), column -> {});
        RackDive dive = new RackDive(kit, aim, List.of(), false, 0);
        Draft chosen = RackChoice.improved(kit, dive, start, aim, steps(30_000));
        assertThat(chosen.cost()).isZero();
        assertThat(chosen.missingWeight()).isLessThan(start.missingWeight());
    }

    @Test
    void whatIsWholeStaysAsItIs() {
        Yard yard = new Yard(new Model(Racks.enough(1, 4, 4)));
        Draft whole = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
        RackAim aim = RackAim.within(yard.model, whole.cost());
        RackDive.Kit kit = new RackDive.Kit(yard, new double[yard.model.types], new Dice(1), column -> {});
        WorkMeter meter = steps(10_000);
        RackDive dive = new RackDive(kit, aim, List.of(), false, 0);
        assertThat(RackChoice.improved(kit, dive, whole, aim, meter)).isSameAs(whole);
        assertThat(meter.used()).isLessThan(10);
    }

    private static long weight(Instance instance) {
        return instance.items().stream()
                .mapToLong(item -> item.weight() * item.demand())
                .sum();
    }
}
