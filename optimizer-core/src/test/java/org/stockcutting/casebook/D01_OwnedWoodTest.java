package org.stockcutting.casebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.material.Grain;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** D: offcuts, measured boards, knots. */
class D01_OwnedWoodTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    static StockItem.OnHand onHand(
            JobBuilder builder, String id, String length, String width, @Nullable Trim trim, Zone... zones) {
        return new StockItem.OnHand(
                id,
                Form.BOARD,
                NominalCatalog.standard()
                        .find(width.equals("3-1/2") ? "2x4" : "2x6")
                        .orElseThrow(),
                builder.length(length),
                builder.length(width),
                builder.length("1-1/2"),
                "wood",
                Grain.LENGTH,
                trim,
                1,
                List.of(zones));
    }

    @Test
    void aSawnOffcutGivesAPartThatTheShopTrimWouldForbid() {
        JobBuilder builder = JobBuilder.inches("rack").boardTrim("1/2", "1/4").part("rail", 1, "51", "2x4");
        Trim sawn = new Trim(builder.length("0"), builder.length("0"), null, null);
        CuttingPlan plan = OPTIMIZER.plan(builder.stock(onHand(builder, "rack-7", "51-1/4", "3-1/2", sawn))
                .build());
        assertThat(plan.unplaced()).isEmpty();
        JobBuilder raw = JobBuilder.inches("rack").boardTrim("1/2", "1/4").part("rail", 1, "51", "2x4");
        CuttingPlan refused = OPTIMIZER.plan(
                raw.stock(onHand(raw, "rack-7", "51-1/4", "3-1/2", null)).build());
        assertThat(refused.unplaced()).hasSize(1);
    }

    /** 5.367 in: a 2x6 face of 5.500 in at 19 % dried to 8 %, by the shrinkage formula of FPL-RP-489 (calculated). */
    @Test
    void aDriedTwoBySixStillGivesTwoBySixes() {
        JobBuilder builder = JobBuilder.inches("dried").part("shelf", 2, "30", "2x6");
        CuttingPlan plan = OPTIMIZER.plan(
                builder.stock(onHand(builder, "dry", "64", "5.367", null)).build());
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.layouts().get(0).pieces().get(0).width()).isEqualTo(builder.length("5.367"));
    }

    @Test
    void aPartStepsAroundAKnotAndATolerantOneDoesNot() {
        JobBuilder builder = JobBuilder.inches("knot").part("rail", 1, "40", "2x4");
        Zone knot = new Zone(
                builder.length("20"),
                builder.length("22"),
                null,
                null,
                Zone.Severity.TIGHT_KNOT,
                Zone.Face.BOTH,
                false);
        CuttingPlan clear = OPTIMIZER.plan(
                builder.stock(onHand(builder, "b", "63", "3-1/2", null, knot)).build());
        assertThat(clear.layouts().get(0).pieces().get(0).x()).isEqualTo(builder.length("22"));
        JobBuilder shorter = JobBuilder.inches("knot").part("rail", 1, "42", "2x4");
        CuttingPlan none = OPTIMIZER.plan(
                shorter.stock(onHand(shorter, "b", "63", "3-1/2", null, knot)).build());
        assertThat(none.unplaced().get(0).reason()).isEqualTo(Unplaced.Reason.NO_CLEAR_ZONE);
    }
}
