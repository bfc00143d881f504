package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/** B: published tables, seen from outside: what a trade name means in a plan, and how many board feet the list says. */
class B01_PublishedTablesTest {

    /**
     * Minimum dressed sizes. Inches: PS 20, American Softwood Lumber Standard, as reprinted at engineeringtoolbox.com, dry and green.
     * Millimetres: the same sizes in soft conversion, from the same site. Hardwood: the chart of rough and surfaced thickness there.
     */
    @ParameterizedTest
    @CsvSource({
        "in, 1x4, 3-1/2, 3/4",
        "in, 1x6, 5-1/2, 3/4",
        "in, 1x12, 11-1/4, 3/4",
        "in, 5/4x6, 5-1/2, 1",
        "in, 2x4, 3-1/2, 1-1/2",
        "in, 2x6, 5-1/2, 1-1/2",
        "in, 2x8, 7-1/4, 1-1/2",
        "in, 2x10, 9-1/4, 1-1/2",
        "in, 2x12, 11-1/4, 1-1/2",
        "in, 4x4, 3-1/2, 3-1/2",
        "in, 6x6, 5-1/2, 5-1/2",
        "in, 2x4 green, 3-9/16, 1-9/16",
        "in, 2x6 green, 5-5/8, 1-9/16",
        "in, 1x8 green, 7-1/2, 25/32",
        "mm, 38x89, 89, 38",
        "mm, 38x140, 140, 38",
        "mm, 38x184, 184, 38",
        "mm, 38x235, 235, 38",
        "mm, 38x286, 286, 38",
    })
    void aTradeNameIsCutAtItsDressedSize(String unit, String nominal, String width, String thickness) {
        JsonNode layout = Door.tree(Door.document(Door.read("unit: '" + unit + "', parts: [{length: 30, nominal: '"
                        + nominal + "'}], stock: [{nominal: '" + nominal + "', length: 96, price: {amount: '4'}}]")))
                .at("/layouts/0");
        assertThat(layout.get("width").textValue()).isEqualTo(width);
        assertThat(layout.get("thickness").textValue()).isEqualTo(thickness);
        assertThat(layout.at("/pieces/0/width").textValue()).isEqualTo(width);
    }

    /**
     * Board feet: thickness x width x length in inches / 144, by nominal size, thickness under 1 in counting as 1. 1 x 9 x 96 gives 6,
     * 1-1/2 x 9 x 96 gives 9 (woodworkingtips.com, etip04); a 2x6 of 8 ft has 8.00, the others by the same formula.
     */
    @ParameterizedTest
    @CsvSource({
        "1, nominal: '2x6', 8.00",
        "1, 'width: 9, thickness: 1', 6.00",
        "1, 'width: 9, thickness: \"1-1/2\"', 9.00",
        "1, 'width: 9, thickness: \"3/4\"', 6.00",
        "3, nominal: '2x6', 24.00",
        "2, nominal: '2x4', 10.67",
        "1, nominal: '5/4x6', 5.00",
        "1, 'nominal: \"4/4\", width: 6', 4.00",
    })
    void boardFeetOfTheBuyingList(int boards, String section, String boardFeet) {
        String part = section.startsWith("nominal: \"4/4\"") ? "width: 6, thickness: 1" : section;
        JsonNode plan = Door.tree(Door.document(Door.read("parts: [{quantity: " + boards + ", length: 90, " + part
                + "}], stock: [{id: b, length: 96, " + section + ", price: {amount: '4'}}]")));
        assertThat(plan.at("/buyingList/0/quantity").intValue()).isEqualTo(boards);
        assertThat(plan.at("/buyingList/0/boardFeet").textValue()).isEqualTo(boardFeet);
    }

    /** A price by the board foot is for the nominal size: 10 ft of 2x6 hold 10 board feet, at 875 a thousand 8.75. */
    @ParameterizedTest
    @CsvSource({"0.875, board-foot, 8.75", "875, thousand-board-feet, 8.75", "0.92, foot, 9.20", "8.98, piece, 8.98"})
    void pricesOfTheBuyingList(String amount, String per, String price) {
        JsonNode plan =
                Door.tree(Door.document(Door.read("parts: [{length: 90, nominal: '2x6'}], stock: [{nominal: '2x6',"
                        + " length: \"10'\", price: {amount: '" + amount + "', per: '" + per + "'}}]")));
        assertThat(plan.at("/buyingList/0/price").textValue()).isEqualTo(price);
        assertThat(plan.at("/cost/amount").textValue()).isEqualTo(price);
    }

    /**
     * PS 1 performance categories (published by APA): label thickness of 23/32 is 0.703 in, range 0.688 to 0.750; of 3/4 it is 0.734,
     * range 0.719 to 0.781; of 5/8 it is 0.609. A part of 3/4 takes what is within 1/16 in: all of the first two, none of the third.
     */
    @ParameterizedTest
    @CsvSource({"0.703, 1", "0.688, 1", "0.750, 1", "0.734, 1", "0.719, 1", "0.781, 1", "0.687, 0", "0.609, 0"})
    void panelsOfAPerformanceCategory(String measured, int sheets) {
        CuttingPlan plan =
                Door.plan("parts: [{length: 20, width: 10, thickness: '3/4'}], stock: [{form: sheet, length: 96,"
                        + " width: 48, thickness: '" + measured + "', price: {amount: '60'}}]");
        assertThat(plan.layouts()).hasSize(sheets);
    }

    @Test
    void aMetricSectionIsTakenAsItComes() {
        CuttingPlan plan = Door.plan("unit: mm, parts: [{id: a, quantity: 2, length: 900, nominal: '38x89'}],"
                + " stock: [{nominal: '38x89', length: 2400, price: {amount: '5', currency: EUR}},"
                + " {nominal: '38x140', length: 2400, price: {amount: '1', currency: EUR}}]");
        assertThat(Door.boards(plan)).isEqualTo("38x89-2400 x1");
        for (Layout layout : plan.layouts()) {
            assertThat(layout.pieces()).extracting(PlacedPiece::part).containsExactly("a", "a");
        }
    }
}
