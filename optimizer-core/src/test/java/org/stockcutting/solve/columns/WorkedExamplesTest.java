package org.stockcutting.solve.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** Small examples from books and papers, their optima known. "From memory": the figures were not looked up again. */
class WorkedExamplesTest {

    private static final long[][] CHVATAL = {{45, 97}, {36, 610}, {31, 395}, {14, 211}};
    private static final long[][] PAPER = {
        {2200, 20},
        {2150, 18},
        {2140, 16},
        {2100, 14},
        {2050, 12},
        {2000, 10},
        {1930, 20},
        {1880, 18},
        {1820, 18},
        {1710, 14},
        {1560, 12},
        {1520, 25},
        {1380, 22}
    };
    private static final long[][] GILMORE_GOMORY = {{4, 20}, {3, 10}, {2, 20}};

    static Instance instance(long kerf, long[][] stock, long[][] parts) {
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        for (long[] part : parts) {
            items.add(new ItemType(part[0], 0, part[0], (int) part[1], (int) part[1]));
            places.add(new StockType.Placing(true, false, 0));
        }
        List<StockType> stocks = new ArrayList<>();
        for (long[] s : stock) {
            int copies = s.length > 2 ? (int) s[2] : StockType.UNLIMITED;
            stocks.add(new StockType(s[0], 1, 0, 0, s[1], copies, 0, List.of(), places));
        }
        return new Instance(items, stocks, kerf, 0, Instance.Limits.NONE, List.of(), List.of());
    }

    /** Solves, looks the layouts over, and returns cost and bound. */
    static long[] solve(Instance instance) {
        WorkMeter meter = new WorkMeter(10_000_000, System.nanoTime() + 60_000_000_000L, new CancelToken());
        Answer answer = new ColumnEngine().solve(instance, meter, 1, Engine.EngineListener.NONE);
        long[] found = LineInspector.inspect("worked example", instance, answer);
        assertThat(found[0]).as("all placed").isZero();
        return new long[] {found[1], answer.searchedBound()};
    }

    private static void assertOptimum(long expected, Instance instance) {
        assertThat(solve(instance)).containsExactly(expected, expected);
    }

    /** Chvatal, Linear Programming, 1983, chapter 13 (from memory); with kerf: an integer programme over all patterns. */
    @ParameterizedTest
    @CsvSource({"0, 453", "1, 453", "2, 486"})
    void chvatal(long kerf, long boards) {
        assertOptimum(boards, instance(kerf, new long[][] {{100, 1}}, CHVATAL));
    }

    /** Winston, Operations Research, the Woodco boards (from memory); with a kerf of 2/16: an integer programme. */
    @Test
    void winston() {
        assertOptimum(19, instance(0, new long[][] {{17, 1}}, new long[][] {{9, 15}, {5, 20}, {3, 25}}));
        assertOptimum(21, instance(2, new long[][] {{272, 1}}, new long[][] {{144, 15}, {80, 20}, {48, 25}}));
    }

    /** Wikipedia, "Cutting stock problem", the paper machine (from memory); with kerf: an integer programme. */
    @ParameterizedTest
    @CsvSource({"0, 73", "3, 74", "10, 74", "50, 77"})
    void paperMachine(long kerf, long rolls) {
        assertOptimum(rolls, instance(kerf, new long[][] {{5600, 1}}, PAPER));
    }

    /** Fourer, Gay, Kernighan, AMPL, the roll-cutting example (from memory). */
    @Test
    void ampl() {
        assertOptimum(47, instance(0, new long[][] {{110, 1}}, new long[][] {
            {75, 8}, {55, 10}, {50, 24}, {45, 35}, {20, 48}
        }));
    }

    /** Taha, Operations Research, the trim-loss example with 20 ft rolls (from memory). */
    @Test
    void taha() {
        assertOptimum(263, instance(0, new long[][] {{20, 1}}, new long[][] {{9, 300}, {7, 200}, {5, 150}}));
    }

    /** Gilmore, Gomory, Operations Research 9 (1961), stock 9, 6, 5 (from memory); kerf 1/8: an integer programme. */
    @Test
    void gilmoreGomory() {
        assertOptimum(170, instance(0, new long[][] {{9, 10}, {6, 7}, {5, 6}}, GILMORE_GOMORY));
        assertOptimum(150, instance(0, new long[][] {{9, 9}, {6, 6}, {5, 5}}, GILMORE_GOMORY));
        assertOptimum(190, instance(1, new long[][] {{72, 10}, {48, 7}, {40, 6}}, new long[][] {
            {32, 20}, {24, 10}, {16, 20}
        }));
    }

    /** Marcotte 1986 and Fieldhouse 1990 (from memory): the linear bound rounds up to 2, yet 3 boards are needed. */
    @Test
    void linearBoundIsNotReached() {
        assertOptimum(3, instance(0, new long[][] {{132, 1}}, new long[][] {{44, 2}, {33, 3}, {12, 6}}));
    }

    private static final long[][] STUDS = {{960, 2}, {552, 2}, {816, 4}, {320, 6}, {224, 4}, {144, 2}};

    /** A potting table of 2x4, 1/16 in, trims 1/2 and 1/4 in, kerf 1/8 in; all patterns and an integer programme. */
    @Test
    void pottingTableStuds() {
        assertOptimum(2436, instance(2, trimmed(1482, 348, 1536, 398, 1920, 548, 2304, 698), STUDS));
        assertOptimum(2538, instance(2, trimmed(1536, 398, 1920, 548, 2304, 698), STUDS));
        assertOptimum(2786, instance(2, trimmed(1536, 398), STUDS));
        assertOptimum(3288, instance(2, trimmed(1920, 548), STUDS));
        assertOptimum(3490, instance(2, trimmed(2304, 698), STUDS));
    }

    /** The same table's 5/4x6. */
    @Test
    void pottingTableSlats() {
        assertOptimum(5992, instance(2, trimmed(1536, 998, 1920, 1298, 2304, 1548, 3072, 2098), new long[][] {
            {864, 5}, {816, 4}
        }));
    }

    private static long[][] trimmed(long... lengthsAndPrices) {
        long[][] stock = new long[lengthsAndPrices.length / 2][];
        for (int s = 0; s < stock.length; s++) {
            stock[s] = new long[] {lengthsAndPrices[2 * s] - 12, lengthsAndPrices[2 * s + 1]};
        }
        return stock;
    }
}
