package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.JobWriter;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Warning;
import org.stockcutting.plan.Worklog;

/** Boards of random size: what is known is planned, the rest is estimated, says so, and every figure of it that can be checked is. */
class RandomBoardsTest {

    private static final Optimizer OPTIMIZER = new Optimizer();

    private static final String FLAWLESS =
            "\"wood\": {\"models\": [{\"clearRun\": 9999, \"zone\": 0, \"endCheck\": 0, \"unusableBoards\": \"0\"}]}";

    private static final String ROUGH = """
            {"id": "rough", "form": "random", "nominal": "4/4", "leastLength": 72, "length": 120, "leastWidth": 5, "width": 10,
             "price": {"amount": "5.50", "per": "board-foot"}}""";

    private static JobReading read(String json) {
        return new JobReader().read(json.getBytes(StandardCharsets.UTF_8));
    }

    private static Job job(String parts, String stock, String rest) {
        JobReading reading = read("{\"material\": \"oak\", \"shop\": {\"thicknessTolerance\": 0}, \"parts\": [" + parts
                + "], \"stock\": [" + stock + "], \"effort\": {\"work\": 100000}" + (rest.isEmpty() ? "" : ", " + rest)
                + "}");
        assertThat(reading.faults()).isEmpty();
        return reading.job();
    }

    private static String part(String id, int quantity, String length, String width) {
        return "{\"id\": \"" + id + "\", \"quantity\": " + quantity + ", \"length\": \"" + length + "\", \"width\": \""
                + width + "\", \"thickness\": 1}";
    }

    private static Estimate only(CuttingPlan plan) {
        assertThat(plan.derived().estimates()).hasSize(1);
        return plan.derived().estimates().get(0);
    }

    /**
     * By hand: boards that are all 100 x 8 in without a knot, parts of 24-7/8 x 3-15/16: with kerfs of 1/8 eight fill a board to
     * the end. Sixteen take two boards: 2 * 100 * 8 / 144 = 11.11 board feet; their own area is 16 * 24.875 * 3.9375 = 1567.125 of 1600.
     */
    @Test
    void boardsThatAreAllAlikeComeToWhatTheHandComesTo() {
        Job job = job(
                part("rail", 16, "24-7/8", "3-15/16"),
                ROUGH.replace(
                        "\"leastLength\": 72, \"length\": 120, \"leastWidth\": 5, \"width\": 10",
                        "\"leastLength\": 100, \"length\": 100, \"leastWidth\": 8, \"width\": 8"),
                FLAWLESS);
        Estimate estimate = only(OPTIMIZER.plan(job));
        assertThat(estimate.boards()).isEqualTo(2);
        assertThat(estimate.sure().boards()).isEqualTo(2);
        assertThat(estimate.net())
                .isEqualTo(Volume.of(Length.inches("24.875"), Length.inches("3.9375"), Length.inches("1"))
                        .times(16));
        assertThat(estimate.yield()).isEqualByComparingTo("0.9794");
        assertThat(estimate.boardFeet()).isEqualByComparingTo("11.12");
        assertThat(estimate.cost().amount()).isEqualByComparingTo("61.16");
        assertThat(estimate.atLeast()).as("any of the boards can give a rail").isEmpty();
    }

    @Test
    void itIsAnEstimateAndSaysSo() {
        CuttingPlan plan = OPTIMIZER.plan(job(part("rail", 30, "30", "3"), ROUGH, ""));
        assertThat(plan.header().status()).as("never optimal").isEqualTo(Status.FEASIBLE);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.layouts()).isEmpty();
        assertThat(plan.cost().minorUnits()).as("no part of the plan's cost").isZero();
        assertThat(plan.derived().warnings()).extracting(Warning::code).containsExactly("estimate");
        Estimate estimate = only(plan);
        assertThat(estimate.parts()).containsExactly(new Estimate.Served("rail", 30));
        assertThat(estimate.sure().boardFeet()).isGreaterThan(estimate.boardFeet());
        assertThat(estimate.sure().chance()).isEqualByComparingTo("0.9");
    }

    /** By hand: a shelf of 9 x 50 leaves room for no second one across 10, two lie along 120: five shelves take three boards. */
    @Test
    void largePiecesNeedLargeBoards() {
        String wide =
                part("shelf", 5, "50", "9") + "," + part("rail", 12, "20", "2") + "," + part("pole", 3, "110", "2");
        Estimate estimate = only(OPTIMIZER.plan(job(wide, ROUGH, "")));
        assertThat(estimate.atLeast())
                .containsExactly(
                        new Estimate.AtLeast(3, Length.inches("9"), Length.inches("50")),
                        new Estimate.AtLeast(1, Length.inches("2"), Length.inches("110")));
    }

    /** Six short parts in gangs of three are two blanks: 2 * (3 * 8 in and two kerfs and 1 in) long, 2-1/8 in wide. */
    @Test
    void aGangIsOnePiece() {
        String ganged = part("peg", 6, "8", "2")
                .replace("\"thickness\": 1", "\"thickness\": \"3/4\", \"allowance\": \"milled\", \"gang\": 3");
        Job job = job(ganged, ROUGH, "");
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThat(causes(job, plan)).isEmpty();
        assertThat(only(plan).net())
                .isEqualTo(Volume.of(Length.inches("25.25"), Length.inches("2.125"), Length.inches("1"))
                        .times(2));
    }

    /** Whatever stands in the request first, and however many threads: the same document. */
    @Test
    void theSameJobGivesTheSameEstimate() {
        String twoKinds = ROUGH + "," + ROUGH.replace("rough", "thick").replace("4/4", "8/4");
        List<String> parts = new ArrayList<>(List.of(
                part("a", 12, "30", "3"),
                part("b", 5, "41", "2-1/2"),
                part("c", 7, "22", "4").replace("\"thickness\": 1", "\"thickness\": 2")));
        Job job = job(String.join(",", parts), twoKinds, "");
        Collections.reverse(parts);
        Job other =
                job(String.join(",", parts), ROUGH.replace("rough", "thick").replace("4/4", "8/4") + "," + ROUGH, "");
        String document = new PlanWriter(job).write(OPTIMIZER.plan(job), new TreeMap<>());
        assertThat(new PlanWriter(other).write(OPTIMIZER.plan(other), new TreeMap<>()))
                .isEqualTo(document);
        assertThat(OPTIMIZER.plan(job).derived().estimates())
                .extracting(Estimate::stock)
                .containsExactly("rough", "thick");
    }

    /** Boards that came home are cut first, and what they give is no longer estimated. */
    @Test
    void measuredBoardsReplaceIt() {
        List<Integer> open = new ArrayList<>();
        for (int boards = 0; boards <= 4; boards++) {
            StringBuilder owned = new StringBuilder();
            for (int i = 0; i < boards; i++) {
                owned.append(i == 0 ? "" : ",")
                        .append("{\"id\": \"m")
                        .append(i)
                        .append(
                                "\", \"nominal\": \"4/4\", \"length\": 96, \"width\": 7, \"zones\": [{\"from\": 40, \"to\": 43}]}");
            }
            Job job = job(part("rail", 14, "30", "3"), ROUGH, "\"onHand\": [" + owned + "]");
            CuttingPlan plan = OPTIMIZER.plan(job);
            int estimated = plan.derived().estimates().stream()
                    .flatMap(e -> e.parts().stream())
                    .mapToInt(Estimate.Served::quantity)
                    .sum();
            int placed = plan.layouts().stream()
                    .flatMap(l -> l.pieces().stream())
                    .mapToInt(p -> p.numbers().size())
                    .sum();
            assertThat(estimated + placed).isEqualTo(14);
            assertThat(plan.unplaced()).isEmpty();
            open.add(estimated);
        }
        // By hand: 40 in before the knot and 53 behind it hold one length of 30 each, two side by side: four rails a
        // board.
        assertThat(open).containsExactly(14, 10, 6, 2, 0);
    }

    /** After a mishap too: two steps done, and what is left to buy is told as the estimate that it is. */
    @Test
    void itIsEstimatedAgainAfterAMishap() {
        String owned =
                "{\"id\": \"m0\", \"nominal\": \"4/4\", \"length\": 96, \"width\": 7, \"zones\": [{\"from\": 40, \"to\": 43}]}";
        Job job = job(part("rail", 10, "30", "3"), ROUGH, "\"onHand\": [" + owned + "]");
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThat(only(plan).parts()).containsExactly(new Estimate.Served("rail", 6));
        Worklog log = new Worklog(plan.header().jobHash(), List.of(1, 2), List.of(), List.of(), List.of());
        Replan replan = OPTIMIZER.replan(job, plan, log);
        assertThat(replan.plan().derived().estimates())
                .flatExtracting(Estimate::parts)
                .containsExactly(new Estimate.Served("rail", 6));
        assertThat(replan.notes())
                .anyMatch(note -> note.startsWith("Buy about ") && note.endsWith("of rough, an estimate."));
        assertThat(replan.notes()).noneMatch(note -> note.contains("Nothing has to be bought"));
    }

    @Test
    void whatEvenTheLargestCannotGiveIsLeftOutWithItsReason() {
        CuttingPlan plan =
                OPTIMIZER.plan(job(part("beam", 1, "130", "3") + "," + part("rail", 3, "30", "3"), ROUGH, ""));
        assertThat(only(plan).parts()).containsExactly(new Estimate.Served("rail", 3));
        assertThat(plan.unplaced()).hasSize(1);
        assertThat(plan.unplaced().get(0).reason()).isEqualTo(Unplaced.Reason.LONGER_THAN_ANY_STOCK);
        assertThat(plan.unplaced().get(0).limit()).isEqualTo("120");
        assertThat(plan.header().status()).isEqualTo(Status.INFEASIBLE);
        String clearer = ROUGH.replace("\"nominal\"", "\"grade\": \"fas\", \"nominal\"");
        Job graded = job(part("rail", 3, "30", "3").replace("\"id\"", "\"grades\": [\"clear\"], \"id\""), clearer, "");
        assertThat(OPTIMIZER.plan(graded).unplaced())
                .extracting(Unplaced::limit)
                .containsExactly("fas");
    }

    @Test
    void woodThatHardlyEverServesIsNotEstimated() {
        String dense = "\"wood\": {\"models\": [{\"clearRun\": 2, \"zone\": 3}]}";
        CuttingPlan plan = OPTIMIZER.plan(job(part("rail", 3, "60", "3"), ROUGH, dense));
        assertThat(plan.derived().estimates()).isEmpty();
        assertThat(plan.unplaced()).extracting(Unplaced::reason).containsExactly(Unplaced.Reason.NO_CLEAR_ZONE);
    }

    /** A line goes to the cheapest boards that can give it. */
    @Test
    void theCheapestBoardsThatServeAreTaken() {
        String cheap = ROUGH.replace("rough", "short")
                .replace("\"length\": 120", "\"length\": 80")
                .replace("5.50", "4.50");
        CuttingPlan plan = OPTIMIZER.plan(
                job(part("rail", 9, "30", "3") + "," + part("pole", 2, "100", "3"), ROUGH + "," + cheap, ""));
        assertThat(plan.derived().estimates())
                .extracting(e -> e.stock() + " " + e.parts().get(0).part())
                .containsExactly("rough pole", "short rail");
    }

    /** Clear wood gives more than knotty wood, as the grades say; what staves need they take from any width. */
    @Test
    void clearerGradesYieldMore() {
        List<BigDecimal> yields = new ArrayList<>();
        for (String grade : List.of("fas", "1-common", "2a-common", "3a-common")) {
            String graded = ROUGH.replace("\"nominal\"", "\"grade\": \"" + grade + "\", \"nominal\"");
            yields.add(only(OPTIMIZER.plan(job(part("rail", 60, "24", "2"), graded, "")))
                    .yield());
        }
        assertThat(yields).isSortedAccordingTo(Collections.reverseOrder());
    }

    /**
     * Nobody gets more than the clear wood there is. Clear yield in cuttings of 2 ft lies below the next better grade's least: 83 1/3 % for
     * No. 1 Common, 66 2/3 % for No. 2A, 50 % for No. 3A (NHLA rules as reported in the trade's and exporters' summaries). The figures
     * of these grades were set by the same rules, so this shows that cutting adds nothing to them, not that they are true.
     */
    @ParameterizedTest
    @CsvSource({"1-common, 0.8333", "2a-common, 0.6667", "3a-common, 0.5"})
    void nobodyGetsMoreThanTheClearWoodOfTheGrade(String grade, BigDecimal most) {
        String graded = ROUGH.replace("\"nominal\"", "\"grade\": \"" + grade + "\", \"nominal\"");
        assertThat(only(OPTIMIZER.plan(job(part("rail", 60, "24", "2"), graded, "")))
                        .yield())
                .isLessThan(most)
                .isGreaterThan(most.multiply(new BigDecimal("0.4")));
    }

    private static CuttingPlan with(CuttingPlan plan, Status status, Derived derived) {
        PlanHeader h = plan.header();
        PlanHeader header = new PlanHeader(
                h.job(),
                h.jobHash(),
                status,
                h.stopReason(),
                h.reproducible(),
                h.seed(),
                h.work(),
                h.workVersion(),
                h.engine());
        return new CuttingPlan(
                header,
                plan.cost(),
                plan.objective(),
                plan.layouts(),
                plan.unplaced(),
                plan.certificate(),
                plan.violations(),
                derived);
    }

    private interface Change {
        Estimate apply(Estimate e);
    }

    private static Set<String> causes(Job job, CuttingPlan plan, Change change) {
        Derived d = plan.derived();
        Derived other = new Derived(
                d.buyingList(),
                d.offcuts(),
                d.cutSequence(),
                d.setUps(),
                d.yield(),
                d.warnings(),
                d.longestOffcut(),
                d.nearMisses(),
                d.tradeOff(),
                List.of(change.apply(d.estimates().get(0))),
                null);
        return causes(job, with(plan, plan.header().status(), other));
    }

    private static Set<String> causes(Job job, CuttingPlan plan) {
        Set<String> causes = new TreeSet<>();
        PlanChecker.check(job, plan).stream().map(Violation::cause).forEach(causes::add);
        return causes;
    }

    @Test
    void theCheckerHoldsEveryFigureThatFollows() {
        Job job = job(part("shelf", 5, "50", "9"), ROUGH, "");
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThat(causes(job, plan)).isEmpty();
        Derived d = plan.derived();
        assertThat(causes(job, with(plan, Status.OPTIMAL, d))).containsExactly("status");
        assertThat(causes(job, with(plan, Status.FEASIBLE, d.withEstimates(List.of(), List.of()))))
                .contains("unplaced");
        assertThat(causes(
                        job,
                        plan,
                        e -> estimate(e, e.stock(), List.of(new Estimate.Served("shelf", 4)), e.yield(), e.atLeast())))
                .contains("unplaced", "estimate");
        assertThat(causes(job, plan, e -> estimate(e, "other", e.parts(), e.yield(), e.atLeast())))
                .contains("unknown-stock");
        assertThat(causes(job, plan, e -> estimate(e, e.stock(), e.parts(), new BigDecimal("0.9"), e.atLeast())))
                .containsExactly("estimate");
        assertThat(causes(job, plan, e -> estimate(e, e.stock(), e.parts(), new BigDecimal("1.1"), e.atLeast())))
                .containsExactly("estimate");
        assertThat(causes(job, plan, e -> estimate(e, e.stock(), e.parts(), e.yield(), List.of())))
                .containsExactly("estimate");
        Derived silent = new Derived(
                d.buyingList(),
                d.offcuts(),
                d.cutSequence(),
                d.setUps(),
                d.yield(),
                List.of(),
                null,
                List.of(),
                d.tradeOff(),
                d.estimates(),
                null);
        assertThat(causes(job, with(plan, Status.FEASIBLE, silent))).containsExactly("warning");
        Job thin = job(part("shelf", 5, "50", "9").replace("\"thickness\": 1", "\"thickness\": 2"), ROUGH, "");
        assertThat(causes(thin, plan)).contains("estimate");
    }

    private static Estimate estimate(
            Estimate e, String stock, List<Estimate.Served> parts, BigDecimal yield, List<Estimate.AtLeast> atLeast) {
        return new Estimate(
                stock,
                parts,
                e.net(),
                yield,
                e.volume(),
                e.boardFeet(),
                e.boards(),
                e.cost(),
                e.sure(),
                atLeast,
                e.trials(),
                e.wood());
    }

    @Test
    void documentsSayWhatTheyWereTold() {
        Job job = job(part("shelf", 5, "50", "9"), ROUGH, "");
        assertThat(read(JobWriter.write(job)).job()).isEqualTo(job);
        CuttingPlan plan = OPTIMIZER.plan(job);
        String document = new PlanWriter(job).write(plan, new TreeMap<>());
        CuttingPlan again = new PlanReader(job).read(document).plan();
        assertThat(again).isEqualTo(plan);
        assertThat(causes(job, again)).isEmpty();
    }

    /** Faults point to where an entry stands in the document, random boards before fixed ones or behind. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void faultsPointIntoTheDocument(boolean randomFirst) {
        String random = ROUGH.replace("\"leastWidth\": 5", "\"leastWidth\": 50").replace("board-foot", "piece");
        String fixed = "{\"id\": \"plank\", \"length\": 0, \"width\": 4, \"thickness\": 1, \"price\": {\"amount\": 2}}";
        JobReading reading = read("{\"parts\": [" + part("a", 1, "20", "3") + "], \"stock\": ["
                + (randomFirst ? random + "," + fixed : fixed + "," + random) + "]}");
        int at = randomFirst ? 0 : 1;
        assertThat(reading.faults())
                .extracting(Fault::pointer)
                .contains(
                        "/stock/" + at + "/leastWidth",
                        "/stock/" + at + "/price/per",
                        "/stock/" + (1 - at) + "/length");
    }

    @Test
    void whatDoesNotBelongToAFormIsRefused() {
        JobReading reading = read("{\"parts\": [" + part("a", 1, "20", "3") + "], \"stock\": ["
                + ROUGH.replace("\"form\"", "\"available\": 3, \"pack\": 2, \"form\"")
                        .replace("\"leastLength\": 72, ", "")
                + ", {\"length\": 90, \"leastLength\": 50, \"width\": 4, \"thickness\": 1, \"price\": {\"amount\": 2}},"
                + ROUGH.replace("4/4", "2x6").replace("rough", "other") + "]}");
        assertThat(reading.faults())
                .extracting(fault -> fault.pointer() + " " + fault.code())
                .contains(
                        "/stock/0/available conflict",
                        "/stock/0/pack conflict",
                        "/stock/0/leastLength missing",
                        "/stock/1/leastLength conflict");
    }
}
