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
class RackMendingTest {

    private static final long LIMIT = 600_000_000_000L;

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
            WorkMeter meter = new WorkMeter(200_000, System.nanoTime() + LIMIT, new CancelToken());
            Draft mended = new RackMending(kit, patterns).mended(start, aim, meter);
            assertThat(mended.missingWeight()).as("seed " + seed).isLessThanOrEqualTo(start.missingWeight());
            assertThat(LayoutCheck.faults(instance, new Answers(new AreaBound(yard.model)).interim(mended)))
                    .isEmpty();
            before += start.missingWeight() / (double) weight(instance);
            after += mended.missingWeight() / (double) weight(instance);
        }
        assertThat(after).isLessThan(0.7 * before);
    }

    @Test
    void whatIsWholeStaysAsItIs() {
        Yard yard = new Yard(new Model(Racks.enough(1, 4, 4)));
        Draft whole = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
        RackAim aim = RackAim.within(yard.model, whole.cost());
        RackDive.Kit kit = new RackDive.Kit(yard, new double[yard.model.types], new Dice(1), column -> {});
        WorkMeter meter = new WorkMeter(10_000, System.nanoTime() + LIMIT, new CancelToken());
        assertThat(new RackMending(kit, List.of()).mended(whole, aim, meter)).isSameAs(whole);
        assertThat(meter.used()).isLessThan(10);
    }

    private static long weight(Instance instance) {
        return instance.items().stream()
                .mapToLong(item -> item.weight() * item.demand())
                .sum();
    }
}
