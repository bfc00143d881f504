package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

class RackChoiceTest {

    @Test
    void whatIsMissingGetsLessOnTheSameBoards() {
        double before = 0;
        double after = 0;
        for (long seed = 0; seed < 6; seed++) {
            ShortDraft job = ShortDraft.of(seed);
            RackDive dive = new RackDive(job.kit(), job.aim(), job.patterns(), false, 0);
            Draft chosen = RackChoice.improved(job.kit(), dive, job.start(), job.aim(), ShortDraft.steps(100_000));
            before += job.missed(job.start());
            after += job.missed(chosen);
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
        Draft chosen = RackChoice.improved(kit, dive, start, aim, ShortDraft.steps(30_000));
        assertThat(chosen.cost()).isZero();
        assertThat(chosen.missingWeight()).isLessThan(start.missingWeight());
    }

    @Test
    void whatIsWholeStaysAsItIs() {
        Yard yard = new Yard(new Model(Racks.enough(1, 4, 4)));
        Draft whole = new Filling(yard).build(Filling.Order.AREA, Filling.BEST_TRIAL, RootCut.CROSSCUT);
        RackAim aim = RackAim.within(yard.model, whole.cost());
        RackDive.Kit kit = new RackDive.Kit(yard, new double[yard.model.types], new Dice(1), column -> {});
        WorkMeter meter = ShortDraft.steps(10_000);
        RackDive dive = new RackDive(kit, aim, List.of(), false, 0);
        assertThat(RackChoice.improved(kit, dive, whole, aim, meter)).isSameAs(whole);
        assertThat(meter.used()).isLessThan(10);
    }
}
