package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.material.Grain;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Warning;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;

/** C: what can't be made is named with numbers and a way out, and the rest is planned; what can't be read is named all at once. */
class C01_ReasonsTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    private static JobBuilder job() {
        return JobBuilder.inches("case")
                .material("pine")
                .part("rail", 2, "40", "2x4")
                .board("b", "2x4", "8'", "4");
    }

    private static Unplaced only(CuttingPlan plan) {
        assertThat(plan.unplaced()).hasSize(1);
        return plan.unplaced().get(0);
    }

    @Test
    void longerThanAnyStock() {
        CuttingPlan plan = OPTIMIZER.plan(job().part("beam", 1, "102", "2x4").build());
        Unplaced beam = only(plan);
        assertThat(beam.reason()).isEqualTo(Unplaced.Reason.LONGER_THAN_ANY_STOCK);
        assertThat(beam.needs()).isEqualTo("102");
        assertThat(beam.limit()).isEqualTo("96");
        assertThat(beam.remedy()).contains("10'");
        assertThat(plan.header().status()).isEqualTo(Status.INFEASIBLE);
        assertThat(plan.layouts()).as("the rest is planned").isNotEmpty();
        assertThat(plan.objective().value()).as("two rails from one board").isEqualTo(400);
    }

    @Test
    void aMaterialThatNobodySells() {
        CuttingPlan plan = OPTIMIZER.plan(
                job().material("teak").part("tray", 1, "10", "4", "3/4").build());
        assertThat(only(plan).reason()).isEqualTo(Unplaced.Reason.NO_STOCK_OF_MATERIAL);
        assertThat(only(plan).needs()).isEqualTo("teak");
    }

    @Test
    void stockThatRunsOut() {
        JobBuilder builder = JobBuilder.inches("case").material("other").part("rail", 5, "40", "2x4");
        StockItem.ForSale two = limited(2);
        CuttingPlan plan = OPTIMIZER.plan(builder.stock(two).build());
        assertThat(only(plan).reason()).isEqualTo(Unplaced.Reason.STOCK_EXHAUSTED);
        assertThat(only(plan).quantity()).as("two boards give four rails").isEqualTo(1);
        assertThat(plan.header().status()).isEqualTo(Status.INFEASIBLE);
    }

    private static StockItem.ForSale limited(int copies) {
        StockItem.ForSale any = job().build().forSale().get(0);
        return new StockItem.ForSale(
                "few",
                Form.BOARD,
                any.nominal(),
                any.length(),
                any.width(),
                any.thickness(),
                "other",
                Grain.LENGTH,
                null,
                copies,
                any.price());
    }

    @Test
    void tenMistakesAreNamedAtOnce() {
        String text = "{\"unit\": \"yard\", \"sets\": 0, \"shop\": {\"kerf\": {\"crosscut\": \"-1/8\"}}, \"colour\": 1,"
                + " \"parts\": [{\"id\": \"a\", \"length\": \"1/3\", \"nominal\": \"2x4\"},"
                + " {\"id\": \"a\", \"length\": 10, \"nominal\": \"3x99\"},"
                + " {\"id\": \"c\", \"quantity\": 0, \"length\": 10, \"nominal\": \"2x4\"},"
                + " {\"id\": \"d\", \"length\": 10, \"width\": 3}],"
                + " \"stock\": [{\"nominal\": \"2x4\", \"length\": \"long\"}], \"goal\": \"glory\"}";
        JobReading reading = new JobReader().read(text);
        assertThat(reading.job()).isNull();
        List<String> pointers = reading.faults().stream().map(Fault::pointer).toList();
        assertThat(pointers)
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
                        "/stock/0/length",
                        "/goal");
    }

    @Test
    void rawEndsAndFactoryEdgesAreWarnedAbout() {
        CuttingPlan boards = OPTIMIZER.plan(job().build());
        assertThat(boards.derived().warnings()).extracting(Warning::code).contains("raw-end");
        Job sheet = JobBuilder.inches("sheet")
                .part("side", 1, "40", "20", "3/4")
                .sheet("ply", "96", "48", "3/4", "60")
                .build();
        assertThat(OPTIMIZER.plan(sheet).derived().warnings())
                .extracting(Warning::code)
                .contains("factory-edge");
        CuttingPlan trimmed = OPTIMIZER.plan(job().boardTrim("1/2", "1/2").build());
        assertThat(trimmed.derived().warnings()).extracting(Warning::code).doesNotContain("raw-end");
    }

    @Test
    void anOffcutWithSawnEndsIsNotWarnedAbout() {
        JobBuilder builder = JobBuilder.inches("rack").part("rail", 1, "51", "2x4");
        Job job = builder.boardTrim("1/2", "1/4")
                .stock(D01_OwnedWoodTest.onHand(
                        builder,
                        "rack-7",
                        "51-1/4",
                        "3-1/2",
                        new Trim(builder.length("0"), builder.length("0"), null, null)))
                .build();
        assertThat(OPTIMIZER.plan(job).derived().warnings())
                .extracting(Warning::code)
                .doesNotContain("raw-end");
    }
}
