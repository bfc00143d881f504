package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.JobRefusedException;
import org.stockcutting.Optimizer;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** D: grades. A part takes the grades it names, and no others; the checker judges that by itself. */
class D02_GradesTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    private static Part part(String id, int quantity, String length, String... grades) {
        Part any = JobBuilder.inches("any")
                .material("oak")
                .part(id, quantity, length, "2x4")
                .build()
                .parts()
                .get(0);
        return any.withSelection(any.selection().withGrades(List.of(grades)));
    }

    private static StockItem.ForSale board(String id, String price, String grade) {
        return JobBuilder.inches("any")
                .material("oak")
                .board(id, "2x4", "8'", price)
                .build()
                .forSale()
                .get(0)
                .withGrade(grade);
    }

    private static CuttingPlan plan(JobBuilder builder) {
        return OPTIMIZER.plan(builder.effort(new Effort(100_000L, null, 1, 1)).build());
    }

    /** By hand: two rails of 40 in fill a clear board of $9; four cleats of 20 in fill a knotty one of $4. Alone in clear it is $18. */
    @Test
    void eachPartComesFromAGradeThatItTakes() {
        CuttingPlan mixed = plan(JobBuilder.inches("case")
                .part(part("rail", 2, "40", "clear"))
                .part(part("cleat", 4, "20"))
                .stock(board("dear", "9", "clear"))
                .stock(board("cheap", "4", "no2")));
        assertThat(mixed.cost().amount()).isEqualByComparingTo("13");
        assertThat(mixed.header().status()).isEqualTo(Status.OPTIMAL);
        for (Layout layout : mixed.layouts()) {
            assertThat(layout.stock()).isEqualTo(layout.pieces().get(0).part().equals("rail") ? "dear" : "cheap");
        }
        CuttingPlan both = plan(JobBuilder.inches("case")
                .part(part("rail", 2, "40", "no2", "clear"))
                .part(part("cleat", 4, "20", "clear"))
                .stock(board("dear", "9", "clear"))
                .stock(board("cheap", "4", "no2")));
        assertThat(both.cost().amount()).as("the rails may be knotty").isEqualByComparingTo("13");
    }

    @Test
    void woodThatNobodyGradedServesOnlyPartsThatNameNoGrade() {
        CuttingPlan plan = plan(JobBuilder.inches("case")
                .part(part("rail", 1, "40", "clear", "select"))
                .part(part("cleat", 1, "20"))
                .stock(board("plain", "4", null))
                .stock(board("knotty", "3", "no2")));
        assertThat(plan.unplaced()).hasSize(1);
        Unplaced rail = plan.unplaced().get(0);
        assertThat(rail.part()).isEqualTo("rail");
        assertThat(rail.reason()).isEqualTo(Unplaced.Reason.NO_STOCK_OF_MATERIAL);
        assertThat(rail.needs()).isEqualTo("oak clear or select");
        assertThat(rail.limit()).isEqualTo("no2, not graded");
        assertThat(rail.remedy()).contains("add oak of grade clear or select");
        assertThat(plan.header().status()).isEqualTo(Status.INFEASIBLE);
    }

    @Test
    void theCheckerSeesAWrongGrade() {
        Job job = JobBuilder.inches("case")
                .part(part("rail", 2, "40", "clear"))
                .stock(board("dear", "9", "clear"))
                .effort(new Effort(100_000L, null, 1, 1))
                .build();
        CuttingPlan plan = OPTIMIZER.plan(job);
        Job knotty = job.withLists(job.parts(), List.of(board("dear", "9", "no2")), List.of());
        assertThat(PlanChecker.check(knotty, plan)).extracting(Violation::cause).contains("grade");
    }

    @Test
    void offcutsKeepTheGradeOfTheirBoard() {
        StockItem.OnHand owned = new StockItem.OnHand(
                        "rack",
                        Form.BOARD,
                        null,
                        Length.inches("80"),
                        Length.inches("3.5"),
                        Length.inches("1.5"),
                        "oak",
                        org.stockcutting.material.Grain.LENGTH,
                        null,
                        1,
                        List.<Zone>of())
                .withGrade("select");
        CuttingPlan plan = plan(JobBuilder.inches("case")
                .material("oak")
                .keep(Form.BOARD, "12", "1")
                .part("cleat", 1, "20", "3.5", "1.5")
                .stock(owned));
        assertThat(plan.derived().offcuts()).extracting(StockItem::grade).containsExactly("select");
    }

    @Test
    void namesAreThoseOfTheTableOrOfTheStock() {
        Job job = JobBuilder.inches("case")
                .part(part("rail", 1, "40", "claer"))
                .stock(board("dear", "9", "yard blue"))
                .build();
        try {
            OPTIMIZER.plan(job);
            throw new AssertionError("an unknown grade was taken");
        } catch (JobRefusedException e) {
            assertThat(e.faults()).extracting(Fault::code).containsExactly("unknown-grade");
            assertThat(e.faults()).extracting(Fault::pointer).containsExactly("/parts/0/grades");
            assertThat(e.faults().get(0).expected()).contains("clear").contains("yard blue");
        }
        Job own = job.withLists(List.of(part("rail", 1, "40", "yard blue")), job.forSale(), List.of());
        assertThat(OPTIMIZER.plan(own).unplaced()).isEmpty();
    }

    @Test
    void aTableSaysThemInOneCell() {
        JobReading reading = new CsvJobReader()
                .read(
                        "id,length,nominal,grades\nrail,40,2x4,clear; select\n",
                        "id,length,nominal,price,grade\ndear,96,2x4,9,clear\n",
                        "{\"material\": \"oak\"}");
        assertThat(reading.faults()).isEmpty();
        assertThat(reading.job().parts().get(0).selection().grades()).containsExactly("clear", "select");
        assertThat(reading.job().forSale().get(0).grade()).isEqualTo("clear");
    }

    /** Where every part takes one grade, the job falls apart: it costs what the two jobs cost that are planned apart. */
    @Test
    void twoGradesCostWhatTwoJobsCost() {
        for (int seed = 1; seed <= 25; seed++) {
            Random random = new Random(seed);
            List<Part> clear = parts(random, "c", "clear");
            List<Part> knotty = parts(random, "k", "no2");
            List<StockItem.ForSale> stock = List.of(board("dear", "9", "clear"), board("cheap", "4", "no2"));
            List<Part> all = new ArrayList<>(clear);
            all.addAll(knotty);
            Job job = JobBuilder.inches("case")
                    .goal(Goal.COST)
                    .effort(new Effort(300_000L, null, 1, 1))
                    .build()
                    .withLists(all, stock, List.of());
            CuttingPlan together = OPTIMIZER.plan(job);
            long apart = cost(job.withLists(clear, stock, List.of())) + cost(job.withLists(knotty, stock, List.of()));
            assertThat(together.objective().value().longValueExact())
                    .as("seed %d", seed)
                    .isEqualTo(apart);
            assertThat(together.header().status()).as("seed %d", seed).isEqualTo(Status.OPTIMAL);
        }
    }

    private static List<Part> parts(Random random, String id, String grade) {
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            parts.add(part(id + i, 1 + random.nextInt(4), Integer.toString(10 + random.nextInt(60)), grade));
        }
        return parts;
    }

    private static long cost(Job job) {
        return OPTIMIZER.plan(job).objective().value().longValueExact();
    }

    @Test
    void documentsSayWhatTheyWereToldAndNoMore() {
        Job job = JobBuilder.inches("case")
                .part(part("rail", 1, "40", "select", "clear", "clear"))
                .stock(board("dear", "9", "clear"))
                .build();
        String text = org.stockcutting.io.JobWriter.write(job);
        assertThat(text).contains("\"grades\"").contains("\"grade\": \"clear\"");
        assertThat(new JobReader().read(text).job()).isEqualTo(job);
    }
}
