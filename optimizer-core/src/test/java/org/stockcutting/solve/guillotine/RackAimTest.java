package org.stockcutting.solve.guillotine;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class RackAimTest {

    private final Model model = new Model(Racks.enough(1, 3, 4));

    private double rack() {
        double area = 0;
        for (int s = 0; s < 3; s++) {
            area += model.boardArea(s);
        }
        return area;
    }

    @Test
    void withinACostMoneyCounts() {
        RackAim aim = RackAim.within(model, 250);
        assertThat(aim.room()).isEqualTo(250);
        assertThat(aim.of(3)).isEqualTo(Racks.PRICE);
        assertThat(aim.of(0)).isZero();
        assertThat(aim.allowance().left(new Draft(new Yard(model)))).containsExactly(1, 1, 1, Integer.MAX_VALUE);
    }

    @Test
    void onceThePurchaseIsSettledWoodCounts() {
        RackAim aim = RackAim.from(model, 250, new int[] {1, 1, 1, 2});
        assertThat(aim.room()).isEqualTo(rack() + 2 * model.boardArea(3));
        Yard yard = new Yard(model);
        Draft draft = new Draft(yard);
        draft.add(yard.empty(3));
        draft.add(yard.empty(0));
        assertThat(aim.allowance().left(draft)).containsExactly(0, 1, 1, 1);
        assertThat(aim.of(draft)).isEqualTo(model.boardArea(3) + model.boardArea(0));
        assertThat(aim.isMissing(draft)).isTrue();
    }

    /** Wood counts a thousandth of the pieces in all, so it never outweighs a piece of any size that matters. */
    @Test
    void onHandWhatIsLeftOutCounts() {
        Model hand = new Model(Racks.onHand(Racks.enough(1, 3, 4)));
        Draft nothing = new Draft(new Yard(hand));
        long all = nothing.missingWeight();
        RackAim aim = RackAim.lessMissing(hand, all);
        assertThat(aim.isMissing(nothing)).isTrue();
        assertThat(RackAim.lessMissing(hand, all + 1).isMissing(nothing)).isFalse();
        assertThat(aim.room()).isCloseTo(all - 1 + all / 1000.0, Offset.offset(1e-6 * all));
        RestProgramme programme = aim.programme(nothing);
        programme.solve();
        assertThat(programme.value())
                .as("without any pattern all is left out")
                .isCloseTo(all, Offset.offset(1e-6 * all));
        assertThat(RackAim.isAllOnHand(hand)).isTrue();
        assertThat(RackAim.isAllOnHand(model)).isFalse();
    }

    /** What is missing counts its area, and nothing that misses as much from as many boards is any gain. */
    @Test
    void whileADraftIsMendedWhatItMissesCounts() {
        RackAim purchase = RackAim.from(model, 250, new int[] {1, 1, 1, 2});
        Draft nothing = new Draft(new Yard(model));
        double all = 0;
        for (int t = 0; t < model.types; t++) {
            all += (double) model.area(t) * model.item(t).demand();
        }
        RackAim mending = purchase.mending(nothing);
        assertThat(mending.allowance()).isEqualTo(purchase.allowance());
        assertThat(mending.missing(nothing)).isEqualTo(all);
        assertThat(mending.room()).isEqualTo(all);
        assertThat(mending.isMissing(nothing)).isTrue();
        double wood = 0;
        for (int s = 0; s < 4; s++) {
            wood += mending.of(s);
        }
        assertThat(wood).isCloseTo(1e-5 * all, Offset.offset(1e-9 * all));
    }
}
