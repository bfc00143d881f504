package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.WorkMeter;

class RackMendingTest {

    @Test
    void whatIsMissingGetsLessOnTheSameBoards() {
        double before = 0;
        double after = 0;
        for (long seed = 0; seed < 6; seed++) {
            ShortDraft job = ShortDraft.of(seed);
            RackMending mending = new RackMending(job.kit(), job.patterns());
            before += job.missed(job.start());
            after += job.missed(mending.mended(job.start(), job.aim(), ShortDraft.steps(200_000)));
        }
        assertThat(after).isLessThan(0.7 * before);
    }

    @Test
    void whatIsWholeStaysAsItIs() {
        Yard yard = new Yard(new Model(Racks.enough(1, 4, 4)));
        Draft whole = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
        RackAim aim = RackAim.within(yard.model, whole.cost());
        RackDive.Kit kit = new RackDive.Kit(yard, new double[yard.model.types], new Dice(1), column -> {});
        WorkMeter meter = ShortDraft.steps(10_000);
        assertThat(new RackMending(kit, List.of()).mended(whole, aim, meter)).isSameAs(whole);
        assertThat(meter.used()).isLessThan(10);
    }
}
