package org.stockcutting.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;

class CutLinesTest {

    private static final Length LENGTH = Length.inches("96");
    private static final Length WIDTH = Length.inches("3.5");

    @Test
    void readsTheSideOfTheSlotThatAPartLiesOn() {
        Layout layout = Drawn.row(LENGTH, WIDTH, List.of(Length.inches("20"), Length.inches("30")), true);

        // Worked by hand: trim to 1/2; 20 long ends at 20-1/2; the next starts a kerf later at 20-5/8 and ends at
        // 50-5/8.
        assertThat(CutLines.of(layout).readings(Direction.CROSSCUT))
                .containsExactly(Length.inches("0.5"), Length.inches("20.5"), Length.inches("50.625"));
        assertThat(CutLines.of(layout).readings(Direction.RIP)).isEmpty();
    }

    @Test
    void aPieceBehindWasteIsReadAtItsNearEnd() {
        CutNode.Cuts cuts = new CutNode.Cuts(
                Direction.CROSSCUT,
                List.of(slot("10", "10.125"), slot("30", "30.125"), slot("50.125", "50.25")),
                List.of(
                        new CutNode.PartLeaf("stick"),
                        CutNode.RestLeaf.OFFCUT,
                        new CutNode.PartLeaf("stick"),
                        CutNode.RestLeaf.OFFCUT));

        assertThat(CutLines.of(layout(cuts)).readings(Direction.CROSSCUT))
                .containsExactly(Length.inches("10"), Length.inches("30.125"), Length.inches("50.125"));
    }

    @Test
    void innerCutsRunOnlyThroughTheirOwnStrip() {
        CutNode.Cuts inner = new CutNode.Cuts(
                Direction.CROSSCUT,
                List.of(slot("40", "40.125")),
                List.of(new CutNode.PartLeaf("stick"), CutNode.RestLeaf.OFFCUT));
        CutNode.Cuts outer =
                new CutNode.Cuts(Direction.RIP, List.of(slot("1.5", "1.625")), List.of(CutNode.RestLeaf.OFFCUT, inner));

        List<CutLines.Line> lines = CutLines.of(layout(outer)).lines();

        assertThat(lines).hasSize(2);
        assertThat(lines.get(0).slot())
                .isEqualTo(new CutLines.Box(Length.ZERO, Length.inches("1.5"), LENGTH, Length.inches("0.125")));
        assertThat(lines.get(1).slot())
                .isEqualTo(new CutLines.Box(
                        Length.inches("40"), Length.inches("1.625"), Length.inches("0.125"), Length.inches("1.875")));
    }

    @Test
    void trimsAreListedWithoutTheirCut() {
        Layout layout = Drawn.row(LENGTH, WIDTH, List.of(Length.inches("20")), false);

        assertThat(CutLines.of(layout).trims())
                .containsExactly(new CutLines.Box(Length.ZERO, Length.ZERO, Length.inches("0.375"), WIDTH));
    }

    private static CutNode.Slot slot(String from, String to) {
        return new CutNode.Slot(Length.inches(from), Length.inches(to));
    }

    private static Layout layout(CutNode cuts) {
        return new Layout("plank", 1, LENGTH, WIDTH, Length.inches("0.75"), List.of(), cuts, List.of());
    }
}
