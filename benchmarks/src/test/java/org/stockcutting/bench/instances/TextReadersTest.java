package org.stockcutting.bench.instances;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.StockItem;

/** Each format on a small text, with values that a pencil finds. */
class TextReadersTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    private static List<String> parts(Job job) {
        return job.parts().stream().map(TextReadersTest::part).toList();
    }

    private static String part(Part part) {
        String across = part.section() instanceof Section.Measured measured ? number(measured.width()) : "?";
        return part.quantity() + " of " + number(part.length()) + " by " + across;
    }

    private static List<String> stock(Job job) {
        return job.forSale().stream()
                .map(s -> number(s.length()) + " by " + number(s.width()) + " at " + cost(s) + ", "
                        + (s.available() == null ? "any" : s.available()))
                .toList();
    }

    private static String cost(StockItem.ForSale item) {
        return item.price() == null ? "-" : String.valueOf(Bill.price(item).minorUnits());
    }

    private static String number(Length length) {
        return String.valueOf(length.nanometres() / 1_000_000);
    }

    private static void assertOptimum(Job job, long value) {
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThat(plan.objective().value()).isEqualTo(BigInteger.valueOf(value));
        assertThat(plan.header().status()).isIn(Status.OPTIMAL, Status.FEASIBLE);
    }

    @Test
    void oneLength() {
        Job job = TextReaders.oneLength("small", "3\n10\n7 2\n3\t2\n\n5 1\n", false);

        assertThat(job.goal()).isEqualTo(Goal.BOARDS);
        assertThat(parts(job)).containsExactly("2 of 7 by 10", "2 of 3 by 10", "1 of 5 by 10");
        assertThat(stock(job)).containsExactly("10 by 10 at -, any");
        // 7 + 3 fill a board, twice; 5 needs a third.
        assertOptimum(job, 3);
    }

    @Test
    void oneLengthLongerThanAKilometreOfMillimetres() {
        Job job = TextReaders.oneLength("large", "1\n1500000\n700000 3\n", false);

        assertThat(job.forSale().get(0).length().nanometres()).isEqualTo(1_500_000L * 1_000);
        assertThat(job.parts().get(0).length().nanometres()).isEqualTo(700_000L * 1_000);
        assertOptimum(job, 2);
    }

    @Test
    void severalLengthsWithCopies() {
        Job job = TextReaders.severalLengths("several", "2\n10 1 9\n6 5 6\n2\n5 2\n6 1\n", false);

        assertThat(job.goal()).isEqualTo(Goal.COST);
        assertThat(stock(job)).containsExactly("10 by 10 at 9, 1", "6 by 10 at 6, 5");
        assertThat(parts(job)).containsExactly("2 of 5 by 10", "1 of 6 by 10");
        // Both fives on the ten, the six on a six.
        assertOptimum(job, 15);
    }

    @Test
    void pricedLengths() {
        Job job = TextReaders.pricedLengths("priced", "3 2 1 10\n10 100 6 65\n5 5 6", false);

        assertThat(stock(job)).containsExactly("10 by 10 at 100, any", "6 by 10 at 65, any");
        assertThat(parts(job)).containsExactly("1 of 5 by 10", "1 of 5 by 10", "1 of 6 by 10");
        assertOptimum(job, 165);
    }

    @Test
    void classSheetsWithWords() {
        String text = """
                    1        PROBLEM CLASS
                    3        N. OF ITEMS
                    1    1   RELATIVE AND ABSOLUTE N. OF INSTANCE
                   10    8   HBIN,WBIN
                    9    4   H(I),W(I),I=1,...,N
                    9    4
                    4    9
                """;
        Job oriented = TextReaders.classSheets("class", text, false);
        Job turned = TextReaders.classSheets("class", text, true);

        assertThat(oriented.goal()).isEqualTo(Goal.BOARDS);
        assertThat(stock(oriented)).containsExactly("10 by 8 at -, any");
        assertThat(parts(oriented)).containsExactly("1 of 9 by 4", "1 of 9 by 4", "1 of 4 by 9");
        assertThat(oriented.parts().get(0).grain()).isEqualTo(Grain.LENGTH);
        assertThat(turned.parts().get(0).grain()).isEqualTo(Grain.ANY);
        // The third is wider than the sheet unless it is turned; then it needs a second sheet.
        assertThat(OPTIMIZER.plan(oriented).header().status()).isEqualTo(Status.INFEASIBLE);
        assertOptimum(turned, 2);
    }

    @Test
    void sheetsWithDemands() {
        Job several = TextReaders.demandSheets(
                "several", "2 2 2 0 0 0\n10 10 100\n20 5  110\n 10  5 2 0\n20 5 1 0\nname\n", false);
        Job one = TextReaders.demandSheets("one", "10 10 1 1 0 1 0 0\n 10 5 4 0 0\nname", false);

        assertThat(stock(several)).containsExactly("10 by 10 at 100, any", "20 by 5 at 110, any");
        assertThat(parts(several)).containsExactly("2 of 10 by 5", "1 of 20 by 5");
        assertOptimum(several, 210);
        assertThat(stock(one)).containsExactly("10 by 10 at 100, any");
        assertOptimum(one, 200);
    }

    @Test
    void sheetsOfSeveralSizes() {
        Job job = TextReaders.variedSheets("varied", "2 2 1\n10 10 1 100\n5 10 1 7\n0 10 10 1\n1 5 9 1\n", false);

        assertThat(stock(job)).containsExactly("10 by 10 at 100, any", "5 by 10 at 50, any");
        assertThat(parts(job)).containsExactly("1 of 10 by 10", "1 of 5 by 9");
        // Areas: one sheet of 100, one of 50.
        assertOptimum(job, 150);
    }

    @Test
    void workedExamplesWithKerf() {
        String text = """
                {"1d": [{"id": "two", "stock": [[10, null, 1]], "parts": [[5, 4]], "optimum": 2, "kerf": {"1": 2, "3": 2}},
                        {"id": "open", "stock": [[10, null, 1]], "parts": [[5, 4]]}],
                 "2d_defects": [{"file": "elsewhere"}]}
                """;
        List<Instance> examples = WorkedExamples.read("worked-examples.json", "worked", text);

        assertThat(examples)
                .extracting(Instance::file)
                .containsExactly(
                        "worked-examples.json#two",
                        "worked-examples.json#two kerf 1",
                        "worked-examples.json#two kerf 3");
        assertThat(examples.get(0).known()).isEqualTo(Known.optimum(2));
        assertThat(examples.get(1).job().shop().kerf().crosscut()).isEqualTo(Length.millimetres("1"));
        // 5 + 1 + 5 is over 10: with a saw each piece needs a board of its own, whatever the text claims.
        assertOptimum(examples.get(0).job(), 2);
        assertOptimum(examples.get(1).job(), 4);
    }

    @Test
    void damagedTextsSayWhereAndWhat() {
        assertThatThrownBy(() -> TextReaders.oneLength("x", "2\n10\n7 2\n", false))
                .isInstanceOf(InstanceFormatException.class)
                .hasMessage("the file ends; wanted a size");
        assertThatThrownBy(() -> TextReaders.oneLength("x", "1\n10\n7 two\n", false))
                .hasMessage("line 3: got \"two\", wanted a demand");
        assertThatThrownBy(() -> TextReaders.oneLength("x", "1\n10\n0 2\n", false))
                .hasMessage("line 3: got \"0\", wanted a size of at least 1");
        assertThatThrownBy(() -> TextReaders.oneLength("x", "1\n10\n7 2\n3 1\n", false))
                .hasMessage("line 4: got \"3\", wanted the end of the file");
        assertThatThrownBy(() -> WorkedExamples.read("x", "x", "{")).hasMessageStartingWith("not JSON");
    }
}
