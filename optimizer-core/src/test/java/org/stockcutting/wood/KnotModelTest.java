package org.stockcutting.wood;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** Drawn boards, the usual figures of grades, and the fit to measured boards. */
class KnotModelTest {

    private static final Length MARK = Length.inches("0.0625");

    private static StockItem.OnHand board(String id, String length, List<Zone> zones) {
        return new StockItem.OnHand(
                id,
                Form.BOARD,
                null,
                Length.inches(length),
                Length.inches("5"),
                Length.inches("1"),
                "oak",
                Grain.LENGTH,
                null,
                1,
                zones);
    }

    private static Zone zone(String from, String to, Zone.Severity severity) {
        return new Zone(Length.inches(from), Length.inches(to), null, null, severity, Zone.Face.BOTH, false);
    }

    private static List<StockItem.OnHand> drawn(KnotModel model, int count, long seed) {
        BoardDraw draw = new BoardDraw(model, MARK);
        List<StockItem.OnHand> boards = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            boards.add(board("b" + i, "120", draw.draw(Length.inches("120"), Noise.of(seed, i))));
        }
        return boards;
    }

    /**
     * Clear yield in cuttings of the grade's least length lies between the grade's own least clear yield and the next better grade's: NHLA
     * rules as reported in the hardwood trade's and exporters' summaries (FAS 83 1/3 %, No. 1 Common 66 2/3 %, No. 2A 50 %, No. 3A
     * 33 1/3 %; cuttings 5 ft, then 2 ft).
     */
    @ParameterizedTest
    @CsvSource({
        "fas, 60, 0.8333, 1",
        "1-common, 24, 0.6667, 0.8333",
        "2a-common, 24, 0.5, 0.6667",
        "3a-common, 24, 0.3333, 0.5"
    })
    void theYieldOfAGradeLiesWhereItsRuleSays(String grade, int cutting, double least, double next) {
        KnotModel model = WoodGrades.standard().find(grade).orElseThrow();
        long clear = 0;
        long all = 0;
        for (StockItem.OnHand board : drawn(model, 5_000, 1)) {
            long at = 0;
            List<Zone> zones = board.zones().stream()
                    .sorted(Comparator.comparing(Zone::from))
                    .toList();
            for (Zone zone : zones) {
                clear += cutting(zone.from().nanometres() - at, cutting);
                at = Math.max(at, zone.to().nanometres());
            }
            clear += cutting(board.length().nanometres() - at, cutting);
            all += board.length().nanometres();
        }
        assertThat(clear / (double) all).as("seed 1").isBetween(least, next);
    }

    private static long cutting(long run, int inches) {
        return run >= Length.inches(Integer.toString(inches)).nanometres() ? run : 0;
    }

    @Test
    void manyMeasuredBoardsGiveTheModelTheyCameFrom() {
        KnotModel known = new KnotModel(
                Length.inches("31"),
                Length.inches("3"),
                Length.inches("2"),
                new BigDecimal("0.1"),
                new BigDecimal("0.5"),
                new BigDecimal("0.3"),
                "known");
        KnotModel usual = WoodGrades.standard().find("fas").orElseThrow();
        KnotModel fitted = KnotFit.fit(usual, drawn(known, 3_000, 42));
        assertThat(fitted.clearRun().nanometres())
                .isCloseTo(known.clearRun().nanometres(), Percentage.withPercentage(6));
        assertThat(fitted.zone().nanometres()).isCloseTo(known.zone().nanometres(), Percentage.withPercentage(6));
        // A knot that runs into a check counts as part of it, and marks round outward: checks come out a little long.
        assertThat(fitted.endCheck().nanometres())
                .isCloseTo(known.endCheck().nanometres(), Percentage.withPercentage(9));
        assertThat(fitted.unusableBoards().doubleValue()).isCloseTo(0.1, Offset.offset(0.02));
        assertThat(fitted.tightKnots().doubleValue()).isCloseTo(0.5, Offset.offset(0.02));
        assertThat(fitted.blemishes().doubleValue()).isCloseTo(0.3, Offset.offset(0.02));
    }

    /** By hand: 100 in with zones 40-42 and 70-74 and a check of 1 in; usual run 20 in counts four times: (4 * 20 + 93) / (4 + 2). */
    @Test
    void fewMeasuredBoardsMoveTheUsualFiguresALittle() {
        KnotModel usual = new KnotModel(
                Length.inches("20"),
                Length.inches("2"),
                Length.inches("1"),
                new BigDecimal("0.1"),
                new BigDecimal("0.5"),
                new BigDecimal("0.25"),
                "usual");
        assertThat(KnotFit.fit(usual, List.of())).isEqualTo(usual);
        KnotModel fitted = KnotFit.fit(
                usual,
                List.of(board(
                        "a",
                        "100",
                        List.of(
                                zone("0", "1", Zone.Severity.UNUSABLE),
                                zone("40", "42", Zone.Severity.TIGHT_KNOT),
                                zone("70", "73", Zone.Severity.UNUSABLE),
                                zone("72", "74", Zone.Severity.BLEMISH)))));
        assertThat(fitted.clearRun().nanometres()).isEqualTo(173L * 25_400_000L / 6);
        assertThat(fitted.zone().nanometres()).isEqualTo(14L * 25_400_000L / 6);
        assertThat(fitted.endCheck().nanometres()).isEqualTo(5L * 25_400_000L / 6);
        assertThat(fitted.unusableBoards()).isEqualByComparingTo("0.08");
        assertThat(fitted.tightKnots()).isEqualByComparingTo("0.5");
        assertThat(fitted.blemishes()).isEqualByComparingTo("0.166667");
    }

    /** Clopper and Pearson's limits for 0 of n and n of n are known in closed form: 1 - 0.025^(1/n) and 0.025^(1/n). */
    @Test
    void theIntervalHasItsClosedFormsAtTheEnds() {
        double limit = Math.pow(0.025, 1.0 / 50);
        assertThat(Chance.of(50, 50).low().doubleValue()).isCloseTo(limit, Offset.offset(1e-4));
        assertThat(Chance.of(50, 50).high()).isEqualByComparingTo("1");
        assertThat(Chance.of(0, 50).low()).isEqualByComparingTo("0");
        assertThat(Chance.of(0, 50).high().doubleValue()).isCloseTo(1 - limit, Offset.offset(1e-4));
    }
}
