package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Selection;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;

/** Fronts that follow each other on the wood. Common practice, no source. */
class SequenceRuleTest {

    private static Part front(String id, int quantity, String length, String width, String group) {
        return new Part(
                        id,
                        quantity,
                        Length.inches(length),
                        new Section.Measured(Length.inches(width), Length.inches("0.75")),
                        "oak",
                        null,
                        WoodClass.CLEAR,
                        0,
                        new Making.AsCut(),
                        group,
                        null)
                .withSelection(Selection.NONE.withBinding(Binding.SEQUENCE));
    }

    private static JobBuilder job() {
        return JobBuilder.inches("fronts").material("oak").goal(Goal.WASTE).effort(new Effort(200_000L, null, 1, 1));
    }

    private static CuttingPlan plan(Job job) {
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        return plan;
    }

    @Test
    void frontsOfOneWidthFollowEachOtherEndToEnd() {
        Job job = job().part(front("left", 1, "20", "6", "row"))
                .part(front("right", 2, "15", "6", "row"))
                .measured("board", "52", "7", "0.75")
                .build();
        CuttingPlan plan = plan(job);
        assertThat(plan.unplaced()).isEmpty();
        List<PlacedPiece> pieces = plan.layouts().get(0).pieces();
        assertThat(pieces).extracting(PlacedPiece::part).containsExactly("left", "right", "right");
        assertThat(pieces).extracting(PlacedPiece::numbers).containsExactly(List.of(1), List.of(1), List.of(2));
        assertThat(pieces).extracting(PlacedPiece::y).containsOnly(pieces.get(0).y());
    }

    @Test
    void frontsOfOneLengthFollowEachOtherEdgeToEdge() {
        Job job = job().part(front("a", 1, "20", "4", "stack"))
                .part(front("b", 1, "20", "6", "stack"))
                .part(front("c", 1, "20", "8", "stack"))
                .sheet("ply", "48", "24", "0.75", "30.00")
                .build();
        CuttingPlan plan = plan(job);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.layouts()).hasSize(1);
    }

    @Test
    void aKnotIsNeverWithinARun() {
        Job job = job().part(front("front", 3, "15", "6", "row"))
                .measured("board", "96", "7", "0.75", job().bad("20", "21"))
                .build();
        CuttingPlan plan = plan(job);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.layouts().get(0).pieces().get(0).x()).isGreaterThanOrEqualTo(Length.inches("21"));
    }

    @Test
    void aRunThatNoBoardHoldsIsNamed() {
        Job job = job().part(front("front", 3, "40", "6", "row"))
                .measured("one", "96", "7", "0.75")
                .measured("two", "96", "7", "0.75")
                .build();
        assertThat(plan(job).unplaced()).extracting(Unplaced::reason).containsExactly(Unplaced.Reason.EXCLUDED_BY_RULE);
    }

    @Test
    void checkerRefusesAnotherOrderAndAGap() {
        Job job = job().part(front("left", 1, "20", "6", "row"))
                .part(front("right", 1, "20", "6", "row"))
                .measured("board", "52", "7", "0.75")
                .build();
        CuttingPlan plan = plan(job);
        Part first = job.parts().get(0);
        Job swapped = job.withLists(
                List.of(front("z", 1, "20", "6", "row"), job.parts().get(1)), job.forSale(), job.onHand());
        CuttingPlan other = new Optimizer().plan(swapped);
        assertThat(other.layouts().get(0).pieces())
                .extracting(PlacedPiece::part)
                .containsExactly("right", "z");
        Layout layout = plan.layouts().get(0);
        List<PlacedPiece> pieces = layout.pieces();
        assertThat(pieces.get(1).x().minus(pieces.get(0).x().plus(first.length())))
                .isEqualTo(job.shop().kerf().crosscut());
        Job wider = job.withLists(
                List.of(
                        first.line("left", 1, 0, "row"),
                        front("right", 1, "20", "6", "row"),
                        front("mid", 1, "5", "6", "row")),
                job.forSale(),
                job.onHand());
        CuttingPlan apart = new Optimizer()
                .plan(job.withLists(
                        wider.parts().stream()
                                .map(p -> p.line(p.id(), 1, 0, null))
                                .toList(),
                        job.forSale(),
                        job.onHand()));
        assertThat(PlanChecker.check(wider, apart)).extracting(Violation::cause).contains("group");
    }

    @Test
    void partsThatCannotFollowEachOtherAreFaults() {
        Job job = job().part(front("a", 1, "20", "4", "row"))
                .part(front("b", 1, "25", "6", "row"))
                .measured("board", "52", "7", "0.75")
                .build();
        assertThat(JobReview.review(job)).extracting(fault -> fault.code()).containsExactly("mixed-group");
    }

    /** Every plan of random runs passes the checker, on boards and sheets, with and without saw limits. */
    @Test
    void randomRunsGiveSoundPlans() {
        int placed = 0;
        for (long seed = 1; seed <= 50; seed++) {
            Random random = new Random(seed);
            JobBuilder builder = job().sets(1 + random.nextInt(2));
            boolean column = random.nextBoolean();
            int same = 3 + random.nextInt(6);
            for (int p = 0, n = 1 + random.nextInt(3); p < n; p++) {
                int other = 4 + random.nextInt(12);
                builder.part(front(
                        "f" + p,
                        1 + random.nextInt(2),
                        String.valueOf(column ? 3 * same : other),
                        String.valueOf(column ? other / 2.0 : same),
                        "run"));
            }
            builder.part(front("shelf", 1 + random.nextInt(3), "22", "5", null));
            builder.measured("board", String.valueOf(40 + random.nextInt(50)), "11", "0.75");
            builder.sheet("ply", "60", "40", "0.75", "20.00");
            Job job = builder.build();
            Length margin = Length.inches(String.valueOf(14 + random.nextInt(30)));
            if (random.nextBoolean()) {
                SawLimits limits = new SawLimits(
                        random.nextBoolean() ? margin : null,
                        null,
                        random.nextBoolean() ? margin : null,
                        random.nextBoolean() ? 2 + random.nextInt(2) : null,
                        SawLimits.FirstCut.values()[random.nextInt(3)],
                        random.nextInt(3) == 0 ? Length.inches("4") : null);
                job = job.withShop(job.shop().withLimits(limits));
            }
            CuttingPlan plan = new Optimizer().plan(job);
            assertThat(PlanChecker.check(job, plan)).as("seed %d", seed).isEmpty();
            placed += plan.unplaced().isEmpty() ? 1 : 0;
            if (seed % 5 == 0) {
                Replan replan = new Optimizer().replan(job, plan, RandomMishap.of(seed, plan));
                assertThat(replan.plan() == null
                                || PlanChecker.check(replan.job(), replan.plan())
                                        .isEmpty())
                        .as("seed %d", seed)
                        .isTrue();
            }
        }
        assertThat(placed).isGreaterThan(25);
    }
}
