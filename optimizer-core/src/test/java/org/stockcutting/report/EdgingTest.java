package org.stockcutting.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Edging;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;

/** Cut size is finished size less the strips (common practice, no source); figures by hand. */
class EdgingTest {

    private static Length in(String inches) {
        return Length.inches(inches);
    }

    private static Edging edging(String ends, String edge) {
        return new Edging(in(ends), in(ends), in(edge), null, Edging.USUAL_OVER);
    }

    private static Job job(Section section, Making making, Edging edging) {
        return JobBuilder.inches("case")
                .material("birch plywood")
                .sheet("ply", "96", "48", "0.75", "64.00")
                .part(new Part(
                                "shelf",
                                2,
                                in("30"),
                                section,
                                "birch plywood",
                                null,
                                WoodClass.CLEAR,
                                0,
                                making,
                                null,
                                null)
                        .withEdging(edging))
                .build();
    }

    private static Job shelves(Edging edging) {
        return job(new Section.Measured(in("12"), in("0.75")), new Making.AsCut(), edging);
    }

    @Test
    void shelvesAreCutSmallerByTheirStripsAndTheCheckerKnowsItItself() {
        Job job = shelves(edging("0.25", "0.375"));
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.layouts())
                .isNotEmpty()
                .allSatisfy(layout -> assertThat(layout.pieces()).allSatisfy(piece -> {
                    assertThat(piece.length()).isEqualTo(in("29.5"));
                    assertThat(piece.width()).isEqualTo(in("11.625"));
                }));
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        assertThat(plan.derived().yield().parts())
                .isEqualTo(Volume.of(in("29.5"), in("11.625"), in("0.75")).times(2));
        CuttingPlan full = new Optimizer().plan(shelves(Edging.NONE));
        assertThat(PlanChecker.check(job, full))
                .as("full-size shelves are wrong once they get strips")
                .isNotEmpty();
    }

    @Test
    void allowancesAreAddedToWhatIsLeftWithoutTheStrips() {
        Job job = job(new Section.Measured(in("12"), in("0.5")), new Making.Milled("milled"), edging("0.25", "0.375"));
        CuttingPlan plan = new Optimizer().plan(job);
        // milled: 1 in, 1/8 in, 3/16 in
        assertThat(plan.layouts().get(0).pieces().get(0).length()).isEqualTo(in("30.5"));
        assertThat(plan.layouts().get(0).pieces().get(0).width()).isEqualTo(in("11.75"));
        assertThat(PlanChecker.check(job, plan)).isEmpty();
    }

    /** Ends: 4 strips of 12 + 1; edge: 2 strips of 30 + 1. */
    @Test
    void everyStripIsBoughtAnInchOverItsSide() {
        Job job = shelves(edging("0.25", "0.25"));
        List<BandLine> lines = BandLine.of(job, new Optimizer().plan(job));
        assertThat(lines)
                .containsExactly(new BandLine("birch plywood", in("0.25"), in("0.75"), 6, in("114"), in("31")));
        Job two = shelves(edging("0", "0.25"));
        assertThat(BandLine.of(two, new Optimizer().plan(two)))
                .extracting(BandLine::strips)
                .containsExactly(4, 2);
    }

    @Test
    void stripsMustLeaveSomethingToCut() {
        assertThat(JobReview.review(shelves(edging("15", "0.25"))))
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(org.assertj.core.groups.Tuple.tuple("/parts/0/edging", "conflict"));
        assertThat(JobReview.review(shelves(edging("-1", "0.25"))))
                .extracting(Fault::pointer)
                .contains("/parts/0/edging/start", "/parts/0/edging/end");
        assertThat(JobReview.review(job(new Section.Nominal("2x4"), new Making.AsCut(), edging("0.25", "0.25"))))
                .extracting(Fault::pointer, Fault::code)
                .contains(org.assertj.core.groups.Tuple.tuple("/parts/0/edging", "conflict"));
    }
}
