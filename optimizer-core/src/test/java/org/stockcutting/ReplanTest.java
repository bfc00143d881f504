package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.ReplanWriter;
import org.stockcutting.io.WorklogReader;
import org.stockcutting.io.WorklogReading;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.part.Edging;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Worklog;
import org.stockcutting.stock.Offer;
import org.stockcutting.stock.StockItem;

/** Mishaps small enough to be reckoned by hand; kerf 1/8 in, no trims. */
class ReplanTest {

    private final Optimizer optimizer = new Optimizer();

    private static Job legs() {
        return JobBuilder.inches("Stool")
                .part("leg", 3, "20", "2x4")
                .board("2x4-8", "2x4", "8'", "3.98")
                .build();
    }

    private static Job rails() {
        return JobBuilder.inches("Frame")
                .part("rail", 2, "40", "2x4")
                .board("2x4-8", "2x4", "8'", "3.98")
                .build();
    }

    private static Worklog read(Job job, String json) {
        WorklogReading reading = new WorklogReader(job).read(json);
        assertThat(reading.faults()).isEmpty();
        return Objects.requireNonNull(reading.worklog());
    }

    private Replan replan(Job job, String rest) {
        CuttingPlan plan = optimizer.plan(job);
        String json = "{\"plan\": \"" + plan.header().jobHash() + "\"" + rest + "}";
        return optimizer.replan(job, plan, read(job, json));
    }

    @Test
    void aSpoiledLegComesFromWhatIsLeftOfTheSameBoard() {
        Replan replan = replan(legs(), ", \"done\": [1], \"spoiled\": [{\"part\": \"leg\", \"number\": 1}]");
        CuttingPlan plan = Objects.requireNonNull(replan.plan());
        Job left = Objects.requireNonNull(replan.job());
        // 96 - 20 - 1/8 are in hand; three legs and their kerfs are 60-3/8.
        assertThat(left.onHand().get(0).length()).isEqualTo(legsLeft());
        assertThat(plan.cost()).isNotNull();
        assertThat(plan.derived().buyingList()).isEmpty();
        assertThat(plan.unplaced()).isEmpty();
        assertThat(replan.notes()).contains("Nothing has to be bought.");
        assertThat(replan.lines()).containsExactly(new Replan.Line("leg", "leg", List.of(1, 2, 3), List.of()));
    }

    private static org.stockcutting.length.Length legsLeft() {
        return org.stockcutting.length.Length.inches("75.875");
    }

    /** Sold in twos, the second board came with the first and was not cut. */
    @Test
    void aSpoiledRailComesFromTheRestOfThePack() {
        Job rails = rails();
        Offer twos = new Offer(2, List.of(), List.of());
        Job packed =
                rails.withLists(rails.parts(), List.of(rails.forSale().get(0).withOffer(twos)), List.of());
        Replan replan = replan(packed, ", \"done\": [1, 2], \"spoiled\": [{\"part\": \"rail\", \"number\": 1}]");
        CuttingPlan plan = Objects.requireNonNull(replan.plan());
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.derived().buyingList()).isEmpty();
        assertThat(plan.layouts()).extracting(layout -> layout.stock()).contains("2x4-8 uncut");
    }

    @Test
    void aSpoiledRailHasToBeBoughtAgain() {
        Replan replan = replan(rails(), ", \"done\": [1, 2], \"spoiled\": [{\"part\": \"rail\", \"number\": 1}]");
        CuttingPlan plan = Objects.requireNonNull(replan.plan());
        // 96 less two rails and two kerfs is 15-3/4, too short for 40.
        assertThat(String.valueOf(plan.cost())).isEqualTo("3.98 USD");
        assertThat(replan.finished()).containsExactly(new Replan.Finished("rail", List.of(2)));
        assertThat(replan.notes()).contains("Buy 1 x 2x4-8, 3.98 USD.");
    }

    @Test
    void withNothingSpoiledAllGoesOnAsPlannedAndAtTheEndNothingIsLeft() {
        Replan half = replan(legs(), ", \"done\": [1]");
        assertThat(half.kept()).containsExactly("2x4-8 #1");
        assertThat(half.changed()).isEmpty();
        assertThat(half.lines()).containsExactly(new Replan.Line("leg", "leg", List.of(2, 3), List.of()));
        Replan all = replan(legs(), ", \"done\": [1, 2, 3]");
        assertThat(all.plan()).isNull();
        assertThat(all.finished()).containsExactly(new Replan.Finished("leg", List.of(1, 2, 3)));
    }

    @Test
    void aKnotReadsTheSameFromTheOldZeroAndFromTheFreshEnd() {
        String done = ", \"done\": [1], \"zones\": [{\"board\": \"2x4-8 #1\", ";
        Replan old = replan(legs(), done + "\"from\": \"25-1/8\", \"to\": \"26-1/8\"}]");
        Replan fresh = replan(legs(), done + "\"from\": \"5\", \"to\": \"6\", \"measuredFrom\": \"fresh-end\"}]");
        assertThat(fresh).isEqualTo(old);
        StockItem.OnHand board = Objects.requireNonNull(old.job()).onHand().get(0);
        assertThat(board.zones()).hasSize(1);
        assertThat(board.zones().get(0).from()).isEqualTo(org.stockcutting.length.Length.inches("5"));
        assertThat(Objects.requireNonNull(old.plan()).derived().buyingList()).isEmpty();
    }

    @Test
    void whatIsGluedToTheSidesOfAShelfIsStillGluedOnAfterAMishap() {
        Job plain = JobBuilder.inches("Shelves")
                .part("shelf", 2, "40", "3.5", "1.5")
                .board("2x4-8", "2x4", "8'", "3.98")
                .build();
        Edging strips = new Edging(Length.inches("0.25"), null, null, null, Edging.USUAL_OVER);
        Job job = plain.withLists(List.of(plain.parts().get(0).withEdging(strips)), plain.forSale(), plain.onHand());
        Replan replan = replan(job, ", \"missing\": [\"2x4-8 #1\"]");
        assertThat(Objects.requireNonNull(replan.job()).parts()).isEqualTo(job.parts());
        assertThat(Objects.requireNonNull(replan.plan()).layouts().get(0).pieces())
                .allSatisfy(piece -> assertThat(piece.length()).isEqualTo(Length.inches("39.75")));
    }

    @Test
    void aMissingBoardIsBoughtAgain() {
        Replan replan = replan(rails(), ", \"missing\": [\"2x4-8 #1\"]");
        assertThat(String.valueOf(Objects.requireNonNull(replan.plan()).cost())).isEqualTo("3.98 USD");
        assertThat(Objects.requireNonNull(replan.job()).onHand()).isEmpty();
    }

    @Test
    void aBoardThatIsBoughtAndNotTouchedIsNotPaidTwice() {
        Replan replan = replan(rails(), "");
        assertThat(String.valueOf(Objects.requireNonNull(replan.plan()).cost())).isEqualTo("0.00 USD");
        assertThat(replan.kept()).containsExactly("2x4-8 #1");
    }

    @Test
    void everyFaultIsFoundAtOnceWithItsPlace() {
        Job job = legs();
        CuttingPlan plan = optimizer.plan(job);
        Worklog worklog = read(
                job,
                "{\"plan\": \"sha-256:other\", \"done\": [2, 99], \"spoiled\": [{\"part\": \"arm\", \"number\": 1}, "
                        + "{\"part\": \"leg\", \"number\": 3}], \"zones\": [{\"board\": \"oak #1\", \"from\": 1, \"to\": 2}, "
                        + "{\"board\": \"2x4-8 #1\", \"from\": 90, \"to\": 97}], \"missing\": [\"2x4-8 #2\"]}");
        WorklogRefusedException refused =
                catchThrowableOfType(WorklogRefusedException.class, () -> optimizer.replan(job, plan, worklog));
        assertThat(refused.faults())
                .extracting(Fault::pointer)
                .containsExactly(
                        "/plan",
                        "/done/0",
                        "/done/1",
                        "/spoiled/0/part",
                        "/spoiled/1/number",
                        "/zones/0/board",
                        "/zones/1/to",
                        "/missing/0");
    }

    @Test
    void shapeFaultsOfAWorklogCarryPointersToo() {
        WorklogReading reading = new WorklogReader(legs())
                .read(
                        "{\"done\": [\"x\"], \"zones\": [{\"board\": \"b\", \"from\": \"1/3\", \"to\": 2}], \"mising\": []}");
        assertThat(reading.worklog()).isNull();
        assertThat(reading.faults())
                .extracting(Fault::pointer)
                .containsExactlyInAnyOrder("/mising", "/plan", "/done/0", "/zones/0/from");
    }

    @Test
    void theJobThatIsLeftIsADocumentThatCanBePlannedAgain() throws Exception {
        Job job = legs();
        Replan replan = replan(job, ", \"done\": [1]");
        String document = ReplanWriter.write(job, replan, new TreeMap<>());
        String left = new com.fasterxml.jackson.databind.json.JsonMapper()
                .readTree(document)
                .get("job")
                .toString();
        Job again = new JobReader().read(left).orThrow();
        assertThat(optimizer.plan(again).header().jobHash())
                .isEqualTo(Objects.requireNonNull(replan.plan()).header().jobHash());
    }
}
