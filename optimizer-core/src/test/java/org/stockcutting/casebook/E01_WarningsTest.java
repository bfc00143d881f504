package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.plan.Warning;

/** E: a part that keeps a raw end or a factory edge is warned about; saying that the end is good is enough to have it quiet. */
class E01_WarningsTest {

    /** A part of 50 in on a 2x4, 96 in or less; small work is warned about elsewhere. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "                                        | stock: [{nominal: '2x4', length: 96, price: {amount: 4}}]       | raw-end",
                "boardTrim: {start: '1/2', end: '1/4'}   | stock: [{nominal: '2x4', length: 96, price: {amount: 4}}]       | ",
                "boardTrim: {start: '1/2'}               | stock: [{nominal: '2x4', length: 96, price: {amount: 4}}]       | ",
                "boardTrim: {end: '1/2'}                 | stock: [{nominal: '2x4', length: 96, price: {amount: 4}}]       | raw-end",
                "boardTrim: {start: '1/2'}               | stock: [{nominal: '2x4', length: '50-1/2', price: {amount: 4}}] | raw-end",
                "                                        | onHand: [{nominal: '2x4', length: 60}]                          | raw-end",
                "                                        | onHand: [{nominal: '2x4', length: 60, trim: {start: 0, end: 0}}] | ",
                "                                        | onHand: [{nominal: '2x4', length: 50, trim: {start: 0, end: 0}}] | ",
                "                                        | onHand: [{nominal: '2x4', length: 50, trim: {start: 0}}]         | raw-end",
                "boardTrim: {start: '1/2', end: '1/4'}   | onHand: [{nominal: '2x4', length: 50, trim: {start: 0, end: 0}}] | ",
            })
    void rawEnds(String trim, String stock, String warnings) {
        String shop = trim == null ? "" : "shop: {" + trim + "}, ";
        List<Warning> found = Door.plan(shop + "goal: cost, parts: [{length: 50, nominal: '2x4'}], " + stock)
                .derived()
                .warnings();
        assertThat(String.join(" ", found.stream().map(Warning::code).toList()))
                .isEqualTo(warnings == null ? "" : warnings);
        assertThat(found).allMatch(warning -> warning.pointer().equals("/layouts/0"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "                                                                      |                       | factory-edge",
                "sheetTrim: '1/4'                                                      |                       | ",
                "sheetTrim: {start: '1/4', end: '1/4', edge: '1/4', farEdge: '1/4'}    |                       | ",
                "sheetTrim: {start: '1/4', edge: '1/4'}                                |                       | ",
                "sheetTrim: {start: '1/4'}                                             |                       | factory-edge",
                "                                                                      | , trim: 0             | ",
                "                                                                      | , trim: {edge: 0}     | factory-edge",
            })
    void factoryEdges(String trim, String own, String warnings) {
        String shop = trim == null ? "" : "shop: {" + trim + "}, ";
        List<Warning> found = Door.plan(
                        shop + "goal: cost, parts: [{length: 50, width: 20, thickness: '3/4'}], onHand: [{form: sheet,"
                                + " length: 96, width: 48, thickness: '3/4'" + (own == null ? "" : own) + "}]")
                .derived()
                .warnings();
        assertThat(String.join(" ", found.stream().map(Warning::code).toList()))
                .isEqualTo(warnings == null ? "" : warnings);
    }

    @ParameterizedTest
    @CsvSource({"3/4, ''", "23/32, thinner", "11/16, thinner", "25/32, ''"})
    void thinnerThanThePartAsks(String thickness, String warnings) {
        List<Warning> found = Door.plan(
                        "shop: {sheetTrim: '1/4'}, parts: [{length: 50, width: 20, thickness: '3/4'}], stock:"
                                + " [{form: sheet, length: 96, width: 48, thickness: '" + thickness
                                + "', price: {amount: 60}}]")
                .derived()
                .warnings();
        assertThat(String.join(" ", found.stream().map(Warning::code).toList())).isEqualTo(warnings);
    }
}
