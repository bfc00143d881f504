package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.StopReason;

/** A: examples of books and papers, and jobs of our own whose optimum was verified with all patterns and an integer programme. */
class A01_WorkedExamplesTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    /**
     * One stock length, fewest boards; kerf is one saw width between neighbours. Sources, all from memory, optima verified exactly: Chvatal,
     * Linear Programming (1983), ch. 13; Winston, Operations Research (Woodco); the paper machine of Wikipedia's article on the cutting stock
     * problem (published optimum 73); Fourer, Gay, Kernighan, AMPL (published 47); Taha, Operations Research (trim loss); the triple of
     * Marcotte (1986) and Fieldhouse (1990) whose bound rounds up to 2 though 3 are needed.
     */
    @ParameterizedTest
    @CsvSource({
        "100, 0, 453, 45x97 36x610 31x395 14x211",
        "100, 1, 453, 45x97 36x610 31x395 14x211",
        "100, 2, 486, 45x97 36x610 31x395 14x211",
        "17, 0, 19, 9x15 5x20 3x25",
        "272, 2, 21, 144x15 80x20 48x25",
        "5600, 0, 73, 2200x20 2150x18 2140x16 2100x14 2050x12 2000x10 1930x20 1880x18 1820x18 1710x14 1560x12 1520x25 1380x22",
        "5600, 3, 74, 2200x20 2150x18 2140x16 2100x14 2050x12 2000x10 1930x20 1880x18 1820x18 1710x14 1560x12 1520x25 1380x22",
        "5600, 10, 74, 2200x20 2150x18 2140x16 2100x14 2050x12 2000x10 1930x20 1880x18 1820x18 1710x14 1560x12 1520x25 1380x22",
        "5600, 50, 77, 2200x20 2150x18 2140x16 2100x14 2050x12 2000x10 1930x20 1880x18 1820x18 1710x14 1560x12 1520x25 1380x22",
        "110, 0, 47, 75x8 55x10 50x24 45x35 20x48",
        "20, 0, 263, 9x300 7x200 5x150",
        "132, 0, 3, 44x2 33x3 12x6",
    })
    void fewestBoardsOfOneLength(String length, String kerf, long optimum, String parts) {
        JobBuilder builder = shop(kerf).goal(Goal.BOARDS);
        int id = 0;
        for (String part : parts.split(" ")) {
            String[] sizeAndCount = part.split("x");
            builder.part("p" + id++, Integer.parseInt(sizeAndCount[1]), sizeAndCount[0], "10", "10");
        }
        builder.sheet("stock", length, "10", "10", "1");
        proved(builder.build(), optimum);
    }

    /** Gilmore, Gomory, Operations Research 9 (1961), small example with three stock lengths at 6, 7, 10 (from memory, verified). */
    @ParameterizedTest
    @CsvSource({"0, 6, 7, 10, 17000", "0, 5, 6, 9, 15000", "0.125, 6, 7, 10, 19000"})
    void severalStockLengths(String kerf, String five, String six, String nine, long cents) {
        Job job = shop(kerf)
                .part("four", 20, "4", "10", "10")
                .part("three", 10, "3", "10", "10")
                .part("two", 20, "2", "10", "10")
                .sheet("s5", "5", "10", "10", five)
                .sheet("s6", "6", "10", "10", six)
                .sheet("s9", "9", "10", "10", nine)
                .build();
        proved(job, cents);
    }

    @Test
    void theTwoByFoursOfAPottingTable() {
        proved(twoByFours().board("stud", "2x4", "92-5/8", "3.48").build(), 2436);
        proved(twoByFours().build(), 2538);
        JobBuilder planks = JobBuilder.inches("planks")
                .boardTrim("1/2", "1/4")
                .part("top slat", 4, "54", "5/4x6")
                .part("lower slat", 4, "51", "5/4x6")
                .part("shelf", 1, "54", "5/4x6")
                .board("8", "5/4x6", "8'", "9.98")
                .board("10", "5/4x6", "10'", "12.98")
                .board("12", "5/4x6", "12'", "15.48")
                .board("16", "5/4x6", "16'", "20.98");
        proved(planks.build(), 5992);
    }

    private static JobBuilder twoByFours() {
        return JobBuilder.inches("two-by-fours")
                .boardTrim("1/2", "1/4")
                .part("A", 2, "60", "2x4")
                .part("B", 2, "34-1/2", "2x4")
                .part("C", 4, "51", "2x4")
                .part("D", 4, "20", "2x4")
                .part("E", 2, "20", "2x4")
                .part("F", 4, "14", "2x4")
                .part("G", 2, "9", "2x4")
                .board("8", "2x4", "8'", "3.98")
                .board("10", "2x4", "10'", "5.48")
                .board("12", "2x4", "12'", "6.98");
    }

    private static JobBuilder shop(String kerf) {
        ShopRules plain = ShopRules.defaults();
        Length width = Length.millimetres(kerf);
        return JobBuilder.millimetres("worked example")
                .shop(new ShopRules(
                        new Kerf(width, width),
                        plain.boardTrim(),
                        plain.sheetTrim(),
                        plain.limits(),
                        plain.keepOffcuts(),
                        plain.thicknessTolerance(),
                        plain.maxPlaning(),
                        null));
    }

    private static void proved(Job job, long value) {
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.objective().value()).isEqualTo(BigInteger.valueOf(value));
        assertThat(plan.header().stopReason()).isEqualTo(StopReason.PROVED);
        BigInteger proof = plan.objective().searchedBound() == null
                ? plan.objective().bound()
                : plan.objective().searchedBound();
        assertThat(proof).isEqualTo(BigInteger.valueOf(value));
    }
}
