package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.io.JobReading;
import org.stockcutting.job.Fault;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;

/** C: each reason with its numbers and its way out; two rails of 40 in are planned all the same. */
class C02_WayOutTest {

    private static final String RAIL = "{id: rail, quantity: 2, length: 40, nominal: '2x4', material: pine}";
    private static final String BOARD = "{id: b, nominal: '2x4', length: \"8'\", material: pine, price: {amount: '4'}}";

    private static CuttingPlan plan(String part, String stock) {
        return Door.plan("parts: [" + RAIL + ", " + part + "], stock: [" + BOARD + stock + "]");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "length: 102, nominal: '2x4', material: pine | longer-than-any-stock, needs 102, limit 96 | 10'",
                "length: 200, nominal: '2x4', material: pine | longer-than-any-stock, needs 200, limit 96 | 18'",
                "length: 10, nominal: '2x4', material: teak | no-stock-of-material, needs teak, limit null | teak",
                "length: 10, nominal: '2x6', material: pine | no-stock-of-thickness, needs 2x6, limit null | 2x6",
                "length: 10, width: 3, thickness: 2, material: pine | no-stock-of-thickness, needs 2, limit 1-1/2 | thick",
                "length: 10, width: 5, thickness: '1-1/2', material: pine | wider-than-any-stock, needs 5, limit 3-1/2 | staves",
                "length: 3, width: 10, thickness: '1-1/2', material: pine | wider-than-any-stock, needs 10, limit 3-1/2 | staves",
                "length: 10, width: 3, thickness: '1-1/2', grain: width, material: pine | grain-does-not-fit, needs null, limit null | any",
            })
    void whyAPartGetsNoWoodAndWhatHelps(String part, String reason, String remedy) {
        CuttingPlan plan = plan("{id: x, " + part + "}", "");
        assertThat(Door.missing(plan)).isEqualTo("1 x: " + reason);
        assertThat(plan.unplaced().get(0).remedy()).contains(remedy);
        assertThat(plan.header().status()).isEqualTo(Status.INFEASIBLE);
        assertThat(plan.header().stopReason()).isEqualTo(StopReason.PROVED);
        assertThat(Door.boards(plan)).as("the rest is planned").isEqualTo("b x1");
        assertThat(plan.objective().bound()).as("for what is placed").isEqualTo(400);
    }

    /** 8 ft hold two parts of 40 in: three boards are six, one of seven is left over, and a dearer part takes no wood from them. */
    @Test
    void stockExhausted() {
        CuttingPlan plan = Door.plan("parts: [{id: a, quantity: 7, length: 40, nominal: '2x4'}],"
                + " stock: [{id: b, nominal: '2x4', length: 96, available: 3, price: {amount: '4'}}]");
        assertThat(Door.missing(plan)).isEqualTo("1 a: stock-exhausted, needs 1, limit null");
        assertThat(plan.unplaced().get(0).remedy()).contains("1 more").contains("40");
        assertThat(Door.boards(plan)).isEqualTo("b x3");
        assertThat(plan.header().status()).isEqualTo(Status.INFEASIBLE);
    }

    @Test
    void aBoardThatTheCarCannotTakeIsExcludedByRule() {
        CuttingPlan plan = Door.plan("shop: {carLength: 100}, parts: [{id: a, length: 110, nominal: '2x4'}],"
                + " stock: [{id: b, nominal: '2x4', length: 120, price: {amount: '4'}},"
                + " {id: c, nominal: '2x4', length: 96, price: {amount: '4'}}]");
        assertThat(Door.missing(plan)).isEqualTo("1 a: excluded-by-rule, needs 120, limit 100");
        assertThat(plan.unplaced().get(0).remedy()).contains("carLength");
    }

    /** The part with more wood in it comes first, even where two of the other would fill the board as well as money could. */
    @Test
    void mostWoodComesBeforeLeastMoney() {
        CuttingPlan plan = Door.plan("shop: {kerf: {crosscut: 0}}, parts: [{id: long, length: 60, nominal: '2x4'},"
                + " {id: short, quantity: 2, length: 28, nominal: '2x4'}],"
                + " stock: [{id: b, nominal: '2x4', length: 70, available: 1, price: {amount: '4'}}]");
        assertThat(Door.missing(plan)).isEqualTo("2 short: stock-exhausted, needs 2, limit null");
    }

    /**
     * Four staves from different boards cannot come from three boards. Staves are the larger pieces, but a panel that lacks one is
     * nothing: the boards must go to the rails, which fit one to a board.
     */
    @Test
    void noWoodGoesIntoAPanelThatCannotBeCompleted() {
        CuttingPlan plan = Door.plan("parts: [{id: panel, length: 36, width: 15, thickness: '3/4', make: {as: glue-up,"
                + " staves: {min: 3, max: 4, from: different-boards}}},"
                + " {id: rail, quantity: 3, length: 38, width: '2-1/2', thickness: 1}],"
                + " onHand: [{id: b, quantity: 3, length: 40, width: '4-1/4', thickness: 1}]");
        assertThat(Door.missing(plan)).startsWith("1 panel: stock-exhausted");
        assertThat(plan.unplaced()).hasSize(1);
        assertThat(Door.boards(plan)).isEqualTo("b x3");
    }

    @Test
    void tenMistakesAtOnceWithGotWantedAndTheWayOut() {
        JobReading reading = Door.read("unit: yard, sets: 0, shop: {kerf: {crosscut: '-1/8'}}, colour: 1,"
                + " parts: [{id: a, length: '1/3', nominal: '2x4'}, {id: a, length: 10, nominal: '3x99'},"
                + " {id: c, quantity: 0, length: 10, nominal: '2x4'}, {id: d, length: 10, width: 3},"
                + " {id: trim, length: 10, nominal: '2x4'}], stock: [{nominal: '2x4', length: long},"
                + " {nominal: '2x6', length: 96}], onHand: [{nominal: '2x4', length: 40, zones: [{from: 9, to: 3}]}],"
                + " goal: glory");
        assertThat(reading.isValid()).isFalse();
        List<Fault> faults = reading.faults();
        assertThat(faults.stream().map(Fault::pointer).distinct().toList())
                .contains(
                        "/unit",
                        "/sets",
                        "/shop/kerf/crosscut",
                        "/colour",
                        "/parts/0/length",
                        "/parts/1/id",
                        "/parts/1/nominal",
                        "/parts/2/quantity",
                        "/parts/3/thickness",
                        "/parts/4/id",
                        "/stock/0/length",
                        "/goal");
        assertThat(faults).allSatisfy(fault -> {
            assertThat(fault.code()).matches("[a-z0-9-]+");
            assertThat(fault.text()).isNotBlank();
            assertThat(fault.expected()).isNotNull();
        });
    }
}
