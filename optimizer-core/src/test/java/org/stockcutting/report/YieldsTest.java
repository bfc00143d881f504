package org.stockcutting.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.stockcutting.report.Bench.cubic;
import static org.stockcutting.report.Bench.cuts;
import static org.stockcutting.report.Bench.leaf;
import static org.stockcutting.report.Bench.piece;
import static org.stockcutting.report.Bench.rest;
import static org.stockcutting.report.Bench.trim;
import static org.stockcutting.report.Bench.zone;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.part.Making;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.CutNode.RestLeaf;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.PriceUnit;

/** Layouts worked out by hand, in cubic inches. */
class YieldsTest {

    @Test
    void crosscutBoardWithTrimAndKeptOffcut() {
        Bench bench = new Bench().board("2x4-8", "2x4", "96", "3.98", PriceUnit.PIECE);
        bench.part("post", "60", "3-1/2", "1-1/2", new Making.AsCut());
        bench.boardTrim = trim("1/2", "1/4", null, null);
        Layout layout = bench.layout(
                "2x4-8",
                2,
                cuts(Direction.CROSSCUT, "3/8..1/2 60-1/2..60-5/8", RestLeaf.TRIM, leaf("post"), RestLeaf.OFFCUT),
                List.of(piece("post", "1/2", "0", "60", "3-1/2")),
                rest("60-5/8", "0", "35-3/8", "3-1/2", true));
        // Two boards of 5-1/4 square inches: 96, 60, 1/2, 1/8 and 35-3/8 in long.
        YieldFigures yield = bench.derive(layout).yield();
        assertThat(yield)
                .isEqualTo(new YieldFigures(
                        cubic("1008"),
                        cubic("630"),
                        cubic("0"),
                        cubic("1.3125"),
                        cubic("5.25"),
                        cubic("0"),
                        cubic("371.4375"),
                        cubic("0"),
                        new BigDecimal("0.6250")));
        assertThat(Bench.sumOfShares(yield)).isEqualTo(yield.used());
    }

    @Test
    void farEndTrimIsOneAndASliverIsKerf() {
        Bench bench = new Bench().board("b", "2x4", "96", "3.98", PriceUnit.PIECE);
        bench.part("long", "95-1/4", "3-1/2", "1-1/2", new Making.AsCut());
        bench.part("less", "95-15/16", "3-1/2", "1-1/2", new Making.AsCut());
        bench.boardTrim = trim("1/2", "1/4", null, null);
        Layout trimmed = bench.layout(
                "b",
                1,
                cuts(Direction.CROSSCUT, "3/8..1/2 95-3/4..95-7/8", RestLeaf.TRIM, leaf("long"), RestLeaf.TRIM),
                List.of(piece("long", "1/2", "0", "95-1/4", "3-1/2")));
        YieldFigures first = bench.derive(trimmed).yield();
        assertThat(first.trim()).isEqualTo(cubic("3.9375"));
        assertThat(first.kerf()).isEqualTo(cubic("0"));
        bench.boardTrim = trim("0", "0", null, null);
        Layout sliver = bench.layout(
                "b",
                1,
                cuts(Direction.CROSSCUT, "95-15/16..96", leaf("less"), RestLeaf.SLIVER),
                List.of(piece("less", "0", "0", "95-15/16", "3-1/2")));
        YieldFigures second = bench.derive(sliver).yield();
        // 1/16 in of saw dust, 5-1/4 square inches.
        assertThat(second.kerf()).isEqualTo(cubic("0.328125"));
        assertThat(second.trim()).isEqualTo(cubic("0"));
        assertThat(second.waste()).isEqualTo(cubic("0"));
    }

    @Test
    void trimOfLessThanAKerfIsOneClippedSlot() {
        Bench bench = new Bench().board("b", "2x4", "96", "3.98", PriceUnit.PIECE);
        bench.part("p", "95-15/16", "3-1/2", "1-1/2", new Making.AsCut());
        bench.boardTrim = trim("1/16", null, null, null);
        Layout layout = bench.layout(
                "b",
                1,
                cuts(Direction.CROSSCUT, "0..1/16", RestLeaf.SLIVER, leaf("p")),
                List.of(piece("p", "1/16", "0", "95-15/16", "3-1/2")));
        YieldFigures yield = bench.derive(layout).yield();
        assertThat(yield.trim()).isEqualTo(cubic("0.328125"));
        assertThat(yield.kerf()).isEqualTo(cubic("0"));
    }

    @Test
    void millingAndPlaningAreAllowance() {
        Bench bench = new Bench().board("b", "2x6", "48", "5", PriceUnit.PIECE);
        bench.part("slat", "20", "3", "1-1/4", new Making.Milled("milled"));
        // 2x6: 5-1/2 x 1-1/2. Ripped to 3-1/8, then crosscut to 21; finished 20 x 3 x 1-1/4 = 75.
        Layout layout = bench.layout(
                "b",
                1,
                cuts(
                        Direction.RIP,
                        "3-1/8..3-1/4",
                        cuts(Direction.CROSSCUT, "21..21-1/8", leaf("slat"), RestLeaf.OFFCUT),
                        RestLeaf.OFFCUT),
                List.of(piece("slat", "0", "0", "21", "3-1/8")),
                rest("0", "3-1/4", "48", "2-1/4", false),
                rest("21-1/8", "0", "26-7/8", "3-1/8", false));
        YieldFigures yield = bench.derive(layout).yield();
        assertThat(yield.parts()).isEqualTo(cubic("75"));
        // 21 x 3-1/8 x 1-1/2 = 98.4375
        assertThat(yield.allowance()).isEqualTo(cubic("23.4375"));
        // 1-1/2 x 1/8 x (48 + 3-1/8) = 9.5859375
        assertThat(yield.kerf()).isEqualTo(cubic("9.5859375"));
        // 1-1/2 x (48 x 2-1/4 + 26-7/8 x 3-1/8) = 287.9765625
        assertThat(yield.waste()).isEqualTo(cubic("287.9765625"));
        assertThat(yield.used()).isEqualTo(cubic("396"));
        assertThat(yield.ratio()).isEqualTo(new BigDecimal("0.1893"));
    }

    @Test
    void partsTakenAsTheyComeMeasureWhatTheBoardMeasures() {
        Bench bench = new Bench().owned("fat", Form.BOARD, "2x4", "50", "3-5/8", "1-9/16", null);
        bench.part("rail", "41", new Section.Nominal("2x4"), new Making.Milled("milled"));
        Layout layout = bench.layout(
                "fat",
                1,
                cuts(Direction.CROSSCUT, "42..42-1/8", leaf("rail"), RestLeaf.OFFCUT),
                List.of(piece("rail", "0", "0", "42", "3-5/8")),
                rest("42-1/8", "0", "7-7/8", "3-5/8", false));
        YieldFigures yield = bench.derive(layout).yield();
        // 3-5/8 x 1-9/16 = 5.6640625 square inches.
        assertThat(yield.parts()).isEqualTo(cubic("232.2265625"));
        assertThat(yield.allowance()).isEqualTo(cubic("5.6640625"));
    }

    @Test
    void stavesOfAPanelAddUpToThePanel() {
        Bench bench = new Bench().owned("plank", Form.BOARD, null, "101", "6", "1-1/2", null);
        Making making = new Making.GlueUp(Bench.in("3"), Bench.in("5-1/4"), null, Making.StaveSource.ANY);
        bench.part("top", "48", "14-1/2", "1-1/4", making);
        // Staves of 50 x 5-19/64; two from one plank, the third from another; the panel is 48 x 14-1/2 x 1-1/4 = 870.
        Layout two = bench.layout(
                "plank",
                1,
                cuts(
                        Direction.RIP,
                        "5-19/64..5-27/64",
                        cuts(
                                Direction.CROSSCUT,
                                "50..50-1/8 100-1/8..100-1/4",
                                leaf("top"),
                                leaf("top"),
                                RestLeaf.OFFCUT),
                        RestLeaf.OFFCUT),
                List.of(piece("top", "0", "0", "50", "5-19/64"), piece("top", "50-1/8", "0", "50", "5-19/64")),
                rest("0", "5-27/64", "101", "37/64", false),
                rest("100-1/4", "0", "3/4", "5-19/64", false));
        Layout one = bench.layout(
                "plank",
                1,
                cuts(
                        Direction.RIP,
                        "5-19/64..5-27/64",
                        cuts(Direction.CROSSCUT, "50..50-1/8", leaf("top"), RestLeaf.OFFCUT),
                        RestLeaf.OFFCUT),
                List.of(piece("top", "0", "0", "50", "5-19/64")),
                rest("0", "5-27/64", "101", "37/64", false),
                rest("50-1/8", "0", "50-7/8", "5-19/64", true));
        YieldFigures all = bench.derive(two, one).yield();
        assertThat(all.parts()).isEqualTo(cubic("870"));
        // 3 x 50 x 5-19/64 x 1-1/2 = 1191.796875
        assertThat(all.allowance()).isEqualTo(cubic("321.796875"));
        assertThat(bench.derive(two).yield().parts()).isEqualTo(cubic("580"));
    }

    @Test
    void zonesCountOnceAndOnlyInWhatIsThrownAway() {
        Bench bench = new Bench();
        bench.owned(
                "sheet",
                Form.SHEET,
                null,
                "20",
                "10",
                "1",
                null,
                zone("12", "14", null, null),
                zone("13", "15", "2", "4"),
                zone("5", "8", "5", "10"),
                zone("9-1/2", "10-1/2", "6", "7"));
        bench.part("p", "10", "4", "1", new Making.AsCut());
        Layout layout = bench.layout(
                "sheet",
                1,
                cuts(
                        Direction.CROSSCUT,
                        "10..10-1/8",
                        cuts(Direction.RIP, "4..4-1/8", leaf("p"), RestLeaf.OFFCUT),
                        RestLeaf.OFFCUT),
                List.of(piece("p", "0", "0", "10", "4")),
                rest("0", "4-1/8", "10", "5-7/8", false),
                rest("10-1/8", "0", "9-7/8", "10", false));
        YieldFigures yield = bench.derive(layout).yield();
        // 2 x 10, the part of the second beyond it 1 x 2, 3 x 5, and the last less the kerf through it: 1/2 + 3/8.
        assertThat(yield.zones()).isEqualTo(cubic("37.875"));
        assertThat(yield.kerf()).isEqualTo(cubic("2.5"));
        assertThat(yield.waste()).isEqualTo(cubic("119.625"));
        Layout kept = bench.layout(
                "sheet",
                1,
                layout.cuts(),
                layout.pieces(),
                rest("0", "4-1/8", "10", "5-7/8", false),
                rest("10-1/8", "0", "9-7/8", "10", true));
        assertThat(bench.derive(kept).yield().zones()).isEqualTo(cubic("15.5"));
        assertThat(bench.derive(kept).yield().offcutsKept()).isEqualTo(cubic("98.75"));
        assertThat(bench.derive(kept).yield().waste()).isEqualTo(cubic("43.25"));
    }

    @Test
    void nothingUsedYieldsNothing() {
        YieldFigures yield = new Bench().derive().yield();
        assertThat(yield.used()).isEqualTo(cubic("0"));
        assertThat(yield.ratio()).isEqualTo(new BigDecimal("0.0000"));
    }

    @Test
    void refusesLayoutsOfAnotherJob() {
        Bench bench = new Bench().board("b", "2x4", "96", "3.98", PriceUnit.PIECE);
        Layout layout = bench.layout("b", 1, leaf("ghost"), List.of(piece("ghost", "0", "0", "96", "3-1/2")));
        assertThatThrownBy(() -> bench.derive(layout)).hasMessageContaining("\"ghost\"");
        assertThatThrownBy(() -> new Bench().derive(layout)).hasMessageContaining("\"b\"");
    }
}
