package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;

/** D: boards measured at home, written as a maker writes them. All answers by hand. */
class D02_MeasuredBoardsTest {

    private static CuttingPlan plan(String part, String board) {
        return Door.plan("shop: {kerf: {crosscut: '1/8', rip: '1/8'}, boardTrim: {start: '1/2', end: '1/4'}}, parts: ["
                + part + "], onHand: [" + board + "]");
    }

    private static String answer(CuttingPlan plan) {
        return plan.unplaced().isEmpty() ? Door.boards(plan) : Door.missing(plan);
    }

    /** The shop takes 3/4 in off every board; a rack piece with sawn ends has nothing to lose: 51 of its 51-1/4 in are good. */
    @ParameterizedTest
    @CsvSource({
        "'', '1 a: longer-than-any-stock, needs 51, limit 50-1/2'",
        "', trim: {start: 0, end: 0}', r x1",
        "', trim: {start: 0}', r x1",
        "', trim: {start: 0, end: \"1/4\"}', r x1",
        "', trim: {start: 0, end: \"3/8\"}', '1 a: longer-than-any-stock, needs 51, limit 50-7/8'",
    })
    void aRackOffcutWithSawnEnds(String trim, String answer) {
        CuttingPlan plan =
                plan("{id: a, length: 51, nominal: '2x4'}", "{id: r, nominal: '2x4', length: '51-1/4'" + trim + "}");
        assertThat(answer(plan)).isEqualTo(answer);
    }

    /**
     * A 2x6 measured 5.367 in after drying (5.500 in at 19 % to 8 %, shrinkage formula of FPL-RP-489, calculated) gives what asks for a
     * 2x6 at its full measured width, and nothing that asks for 5-1/2.
     */
    @Test
    void aDriedTwoBySix() {
        String board = "{id: dry, nominal: '2x6', length: 96, width: '5.367'}";
        CuttingPlan byName = plan("{id: a, quantity: 3, length: 30, nominal: '2x6'}", board);
        assertThat(answer(byName)).isEqualTo("dry x1");
        assertThat(byName.layouts().get(0).pieces())
                .extracting(PlacedPiece::width)
                .containsOnly(Length.inches("5.367"));
        CuttingPlan bySize = plan("{id: a, length: 30, width: '5-1/2', thickness: '1-1/2'}", board);
        assertThat(answer(bySize)).isEqualTo("1 a: wider-than-any-stock, needs 5-1/2, limit 5.367");
    }

    /** A knot at 20 to 22 of 63 in: 40 in of clear wood lie behind it, 40-3/4 less the end trim. Severities as the class takes them. */
    @ParameterizedTest
    @CsvSource({
        "40, clear, tight-knot, 22",
        "40-3/4, clear, unusable, 22",
        "41, tight-knot, tight-knot, 1/2",
        "62-1/4, tight-knot, tight-knot, 1/2",
        "41, any, tight-knot, 1/2",
        "41, any, blemish, 1/2",
    })
    void aPartStaysClearOfWhatItsClassDoesNotTake(String length, String woodClass, String severity, String x) {
        CuttingPlan plan = plan(
                "{id: a, length: '" + length + "', nominal: '2x4', class: '" + woodClass + "'}",
                "{id: b, nominal: '2x4', length: 63, zones: [{from: 20, to: 22, severity: '" + severity + "'}]}");
        assertThat(answer(plan)).isEqualTo("b x1");
        assertThat(plan.layouts().get(0).pieces().get(0).x()).isEqualTo(Door.length(x));
    }

    @ParameterizedTest
    @CsvSource({
        "clear, tight-knot, ''",
        "clear, blemish, ''",
        "tight-knot, blemish, ''",
        "tight-knot, unusable, ''",
        "any, unusable, ''",
        "any, tight-knot, ', kind: metal'",
    })
    void whatNoClassTakesLeavesTheLongPartOut(String woodClass, String severity, String kind) {
        CuttingPlan plan = plan(
                "{id: a, length: 41, nominal: '2x4', class: '" + woodClass + "'}",
                "{id: b, nominal: '2x4', length: 63, zones: [{from: 20, to: 22, severity: '" + severity + "'" + kind
                        + "}]}");
        assertThat(answer(plan)).isEqualTo("1 a: no-clear-zone, needs 41, limit null");
    }

    /**
     * Two parts of 20 in and one place for the kerf between them. A saw cut may pass a blemish, but no nail: then neither part can be
     * freed from a piece of 40-1/8, and one, behind the nail, from a longer piece.
     */
    @ParameterizedTest
    @CsvSource({"40-1/8, '', 2", "40-1/8, ', kind: metal', 0", "40-1/2, ', kind: metal', 1"})
    void aCutNeverPassesThroughMetal(String length, String kind, int pieces) {
        CuttingPlan plan = plan(
                "{id: a, quantity: 2, length: 20, nominal: '2x4'}",
                "{id: b, nominal: '2x4', length: '" + length + "', trim: {start: 0, end: 0},"
                        + " zones: [{from: 20, to: '20-1/8', severity: blemish" + kind + "}]}");
        assertThat(Door.pieces(plan, "a")).hasSize(pieces);
    }

    /** A knot on the edge of a wide board blocks only its own strip: two strips of 2 in, the part beside the knot still full length. */
    @Test
    void aPartLiesBesideAKnotOnTheEdge() {
        CuttingPlan plan = plan(
                "{id: a, length: 36, width: 3, thickness: 1}",
                "{id: b, length: 40, width: 6, thickness: 1, zones: [{from: 10, to: 30, fromEdge: 0, toEdge: '2-3/4'}]}");
        assertThat(answer(plan)).isEqualTo("b x1");
        PlacedPiece piece = plan.layouts().get(0).pieces().get(0);
        assertThat(piece.y().isLessThan(Length.inches("2.75"))).isFalse();
    }

    /** What is kept says its sawn end: it is the stock on hand of the next job, and gives its whole length there. */
    @Test
    void aKeptOffcutIsTheStockOfTheNextJob() {
        String first = "shop: {boardTrim: {start: '1/2', end: 0}, keepOffcuts: [{length: 12}]},"
                + " parts: [{id: a, length: 60, nominal: '2x4'}], stock: [{nominal: '2x4', length: 96, price: {amount: 4}}]";
        var offcut = Door.tree(Door.document(Door.read(first))).at("/offcuts/0");
        assertThat(offcut.get("length").textValue()).isEqualTo("35-3/8");
        CuttingPlan second = Door.plan(
                "shop: {boardTrim: {start: '1/2', end: 0}}, parts: [{id: a, length: '35-3/8', nominal: '2x4'}], onHand: ["
                        + offcut + "]");
        assertThat(second.unplaced()).isEmpty();
        assertThat(Door.value("parts: [{length: '35-3/8', nominal: '2x4'}], goal: cost, onHand: [" + offcut + "]"))
                .isEqualTo("0.00");
    }
}
