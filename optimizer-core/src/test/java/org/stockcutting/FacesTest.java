package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Selection;
import org.stockcutting.part.ShowFaces;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.Zone;

/** Which face a bad zone shows on, and how far clear wood keeps away from it. Common practice, no source. */
class FacesTest {

    private static Length in(String inches) {
        return Length.inches(inches);
    }

    private static Part part(String id, int quantity, Length length, String width, WoodClass wood, ShowFaces faces) {
        return new Part(
                        id,
                        quantity,
                        length,
                        new Section.Measured(in(width), in("1")),
                        "oak",
                        null,
                        wood,
                        0,
                        new Making.AsCut(),
                        null,
                        null)
                .withSelection(Selection.NONE.withShowFaces(faces));
    }

    private static Zone zone(String from, String to, Zone.Severity severity, Zone.Face face) {
        return new Zone(in(from), in(to), null, null, severity, face, false);
    }

    private static Job job(String margin, List<Zone> zones, Part... parts) {
        JobBuilder builder = JobBuilder.inches("faces")
                .material("oak")
                .goal(Goal.WASTE)
                .effort(new Effort(200_000L, null, 1, 1))
                .measured("board", "96", "6", "1", zones.toArray(Zone[]::new));
        for (Part part : parts) {
            builder.part(part);
        }
        Job job = builder.build();
        return job.withShop(job.shop().withZoneMargin(in(margin)));
    }

    private static boolean isPlaced(Job job) {
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        assertThat(plan.unplaced())
                .extracting(Unplaced::reason)
                .allMatch(reason -> reason == Unplaced.Reason.NO_CLEAR_ZONE);
        return plan.unplaced().isEmpty();
    }

    @Test
    void whatShowsOnTheBackIsNoMatterToAPartSeenFromOneSide() {
        Part oneSided = part("panel", 1, in("90"), "6", WoodClass.CLEAR, ShowFaces.ONE);
        Part twoSided = part("door", 1, in("90"), "6", WoodClass.CLEAR, ShowFaces.BOTH);
        for (Zone.Face face : Zone.Face.values()) {
            List<Zone> zones = List.of(zone("40", "42", Zone.Severity.UNUSABLE, face));
            assertThat(isPlaced(job("1", zones, oneSided))).as("one, %s", face).isEqualTo(face == Zone.Face.DOWN);
            assertThat(isPlaced(job("1", zones, twoSided))).as("both, %s", face).isFalse();
        }
    }

    @Test
    void nailsGoThrough() {
        Zone nail = new Zone(in("40"), in("42"), null, null, Zone.Severity.UNUSABLE, Zone.Face.DOWN, true);
        assertThat(isPlaced(job("0", List.of(nail), part("panel", 1, in("90"), "6", WoodClass.ANY, ShowFaces.ONE))))
                .isFalse();
    }

    @Test
    void clearPartsKeepTheMargin() {
        List<Zone> knot = List.of(zone("40", "43", Zone.Severity.TIGHT_KNOT, Zone.Face.BOTH));
        Length longest = in("51");
        Length longer = longest.plus(Length.ofNanometres(1));
        assertThat(isPlaced(job("2", knot, part("a", 1, longest, "6", WoodClass.CLEAR, ShowFaces.BOTH))))
                .isTrue();
        assertThat(isPlaced(job("2", knot, part("a", 1, longer, "6", WoodClass.CLEAR, ShowFaces.BOTH))))
                .isFalse();
        assertThat(isPlaced(job("0", knot, part("a", 1, longer, "6", WoodClass.CLEAR, ShowFaces.BOTH))))
                .isTrue();
        assertThat(isPlaced(job("2", knot, part("a", 1, in("90"), "6", WoodClass.TIGHT_KNOT, ShowFaces.BOTH))))
                .isTrue();
    }

    @Test
    void checkerKnowsMarginAndFacesItself() {
        Part part = part("a", 1, in("53"), "6", WoodClass.CLEAR, ShowFaces.ONE);
        List<Zone> below = List.of(zone("20", "42", Zone.Severity.BLEMISH, Zone.Face.DOWN));
        Job job = job("0", below, part);
        CuttingPlan plan = new Optimizer().plan(job);
        Part seen = part.withSelection(Selection.NONE);
        Job open = job.withLists(List.of(seen), job.forSale(), job.onHand());
        assertThat(PlanChecker.check(open, plan)).extracting(Violation::cause).contains("zone");
        Job close = job("0", List.of(zone("53", "60", Zone.Severity.BLEMISH, Zone.Face.BOTH)), seen);
        CuttingPlan beside = new Optimizer().plan(close);
        Job wide = close.withShop(close.shop().withZoneMargin(in("1")));
        assertThat(PlanChecker.check(wide, beside)).extracting(Violation::cause).contains("zone");
    }

    @Test
    void marginsAreNotNegative() {
        Job job = job("-1", List.of(), part("a", 1, in("20"), "6", WoodClass.CLEAR, ShowFaces.ONE));
        assertThat(JobReview.review(job)).extracting(fault -> fault.pointer()).containsExactly("/zoneMargin");
    }

    /** Every plan of random boards passes the checker, whatever faces, classes and margins. */
    @Test
    void randomBoardsGiveSoundPlans() {
        for (long seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            List<Zone> zones = new ArrayList<>();
            for (int z = 0, n = 1 + random.nextInt(3); z < n; z++) {
                int from = 5 + random.nextInt(80);
                int edge = random.nextInt(4);
                boolean across = random.nextBoolean();
                zones.add(new Zone(
                        in(String.valueOf(from)),
                        in(String.valueOf(from + 2)),
                        across ? in(String.valueOf(edge)) : null,
                        across ? in(String.valueOf(edge + 2)) : null,
                        Zone.Severity.values()[random.nextInt(3)],
                        Zone.Face.values()[random.nextInt(3)],
                        random.nextInt(8) == 0));
            }
            Part[] parts = new Part[1 + random.nextInt(3)];
            for (int p = 0; p < parts.length; p++) {
                parts[p] = part(
                        "p" + p,
                        1 + random.nextInt(3),
                        in(String.valueOf(6 + random.nextInt(40))),
                        String.valueOf(1 + random.nextInt(6)),
                        WoodClass.values()[random.nextInt(3)],
                        ShowFaces.values()[random.nextInt(2)]);
            }
            Job job = job(String.valueOf(random.nextInt(3) * 0.5), zones, parts);
            CuttingPlan plan = new Optimizer().plan(job);
            assertThat(PlanChecker.check(job, plan)).as("seed %d", seed).isEmpty();
        }
    }
}
