package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobWriter;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Worklog;

/**
 * Parts of frames, both ends mitred, lengths from long point to long point. From one to the next, common practice, no source: turned over
 * L - w + kerf x root 2, not turned L + kerf x root 2. Worked by hand for 16 in, 2 in wide, a kerf of 1/8 in: 14.17678 and 16.17678 in,
 * 14-3/16 and 16-3/16 in on a rule with sixty-fourths; four come out of 58-9/16 or of 64-9/16 in.
 */
class MitredEndsTest {

    private static String text(String board, String ends, String more) {
        return """
                {"material": "ash", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
                 "parts": [{"id": "rail", "quantity": 8, "length": "16", "width": "2", "thickness": "3/4",
                            "ends": {"angle": "45"ENDS}MORE}],
                 "stock": [{"id": "b", "length": "BOARD", "width": "2", "thickness": "3/4", "price": {"amount": "5.00"}}],
                 "effort": {"work": 50000}}
                """.replace("BOARD", board).replace("ENDS", ends).replace("MORE", more);
    }

    private static Job job(String board, String ends) {
        return new JobReader().read(text(board, ends, "")).orThrow();
    }

    private static CuttingPlan plan(Job job) {
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        return plan;
    }

    private static final String TURNED = ", \"stick\": 4, \"flip\": true";
    private static final String STRAIGHT = ", \"stick\": 4";

    @Test
    void neighboursShareACutWhereTheyMayBeTurnedOver() {
        CuttingPlan turned = plan(job("58.5625", TURNED));
        assertThat(turned.header().status()).isEqualTo(Status.OPTIMAL);
        assertThat(turned.cost()).hasToString("10.00 USD");
        assertThat(turned.layouts().get(0).pieces().get(0).length()).isEqualTo(Length.inches("58.5625"));
        assertThat(plan(job("58.5", TURNED)).unplaced())
                .extracting(Unplaced::reason)
                .containsExactly(Unplaced.Reason.LONGER_THAN_ANY_STOCK);
        assertThat(plan(job("64.5", STRAIGHT)).unplaced()).isNotEmpty();
        CuttingPlan straight = plan(job("64.5625", STRAIGHT));
        assertThat(straight.cost()).hasToString("10.00 USD");
        assertThat(straight.layouts().get(0).pieces().get(0).length()).isEqualTo(Length.inches("64.5625"));
        // Each from a piece of its own, as long as its long points.
        CuttingPlan alone = plan(job("64.375", ""));
        assertThat(alone.cost()).hasToString("10.00 USD");
        // What is parts is not more than the wood, slopes taken off.
        assertThat(turned.derived().yield().ratio()).isLessThan(java.math.BigDecimal.ONE);
    }

    @Test
    void theyComeOffTheStickOneByOne() {
        Job job = job("60", TURNED);
        CuttingPlan plan = plan(job);
        List<SequenceStep> steps = plan.derived().cutSequence();
        List<SequenceStep> mitred =
                steps.stream().filter(step -> step.kind() == StepKind.MITRE).toList();
        assertThat(mitred).hasSize(8);
        assertThat(mitred)
                .allMatch(step -> step.setUp().equals(new SequenceStep.SetUp("mitre-45", Length.inches("16"))));
        assertThat(mitred.get(0).caution()).contains("Mitre the first end");
        assertThat(mitred.get(1).caution()).contains("Turn the stick over");
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).kind() == StepKind.MITRE) {
                List<SequenceStep> fewer = new ArrayList<>(steps);
                fewer.remove(i);
                assertThat(causes(job, Altered.steps(plan, fewer)))
                        .as("without %d", i)
                        .contains("sequence");
                SequenceStep.SawCut cut = steps.get(i).cut();
                List<SequenceStep> other = new ArrayList<>(steps);
                other.set(i, at(steps.get(i), "mitre-30", cut));
                assertThat(causes(job, Altered.steps(plan, other)))
                        .as("angle %d", i)
                        .contains("sequence");
                other.set(
                        i,
                        at(
                                steps.get(i),
                                "mitre-45",
                                new SequenceStep.SawCut(
                                        cut.direction(),
                                        cut.on(),
                                        cut.reading().plus(Length.inches("0.5")),
                                        null,
                                        cut.left(),
                                        cut.slack())));
                assertThat(causes(job, Altered.steps(plan, other)))
                        .as("reading %d", i)
                        .contains("sequence");
            }
        }
        List<SequenceStep> swapped = new ArrayList<>(steps);
        int first = steps.indexOf(mitred.get(0));
        swapped.set(first, mitred.get(1));
        swapped.set(first + 1, mitred.get(0));
        assertThat(causes(job, Altered.steps(plan, swapped))).contains("sequence");
    }

    private static SequenceStep at(SequenceStep step, String machine, SequenceStep.SawCut cut) {
        return new SequenceStep(
                step.step(),
                step.kind(),
                new SequenceStep.SetUp(machine, Length.inches("16")),
                step.board(),
                cut,
                step.piece(),
                null,
                step.caution(),
                step.reason(),
                null);
    }

    private static List<String> causes(Job job, CuttingPlan plan) {
        return PlanChecker.check(job, plan).stream().map(Violation::cause).toList();
    }

    /** Milled first, in one stick; mitred, then marked from the long point, and only then. */
    @Test
    void milledAsOneAndMarkedWhenTheEndsAreThere() {
        String more =
                ", \"allowance\": \"milled\", \"marks\": [{\"purpose\": \"dowel\", \"fromEnd\": \"1\", \"fromEdge\": \"1/2\"}]";
        Job job = new JobReader()
                .read(text("60", TURNED, more)
                        .replace(
                                "\"60\", \"width\": \"2\", \"thickness\": \"3/4\"",
                                "\"60\", \"width\": \"2-1/8\", \"thickness\": \"15/16\""))
                .orThrow();
        CuttingPlan plan = plan(job);
        assertThat(plan.cost()).hasToString("10.00 USD");
        List<StepKind> kinds = plan.derived().cutSequence().stream()
                .filter(step -> step.piece() != null && step.piece().number() <= 4)
                .map(SequenceStep::kind)
                .filter(kind -> kind != StepKind.ROUGH_CROSSCUT)
                .distinct()
                .toList();
        assertThat(kinds).containsExactly(StepKind.JOINT, StepKind.PLANE, StepKind.RIP, StepKind.MITRE, StepKind.MARK);
    }

    @Test
    void documentsCarryThem() {
        Job job = job("60", TURNED);
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow()).isEqualTo(job);
        assertThat(new CsvJobReader()
                        .read(CsvTables.parts(job), CsvTables.stock(job), JobWriter.writeShop(job))
                        .orThrow()
                        .parts())
                .isEqualTo(job.parts());
        CuttingPlan plan = plan(job);
        String text = new PlanWriter(job).write(plan, new TreeMap<>());
        assertThat(new PlanReader(job).read(text).orThrow().derived().cutSequence())
                .isEqualTo(plan.derived().cutSequence());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                ", \"stick\": 3 | '' | /parts/0/ends/stick",
                ", \"stick\": 4 | , \"spares\": 1 | /parts/0/ends/stick",
                ", \"stick\": 4 | , \"group\": {\"name\": \"g\", \"rule\": \"same-board\"} | /parts/0/ends/stick",
                ", \"stick\": 0 | '' | /parts/0/ends/stick",
                "'' | , \"taper\": {\"foot\": \"1\", \"faces\": \"one\"} | /parts/0/ends",
                "'' | , \"fit\": \"after-assembly\" | /parts/0/ends",
                "'' | , \"allowance\": \"milled\", \"gang\": 2 | /parts/0/ends",
                "'' | , \"edging\": {\"end\": \"1/8\"} | /parts/0/ends"
            })
    void whatCannotBeIsRefused(String ends, String more, String pointer) {
        assertThat(new JobReader().read(text("60", ends, more)).faults())
                .extracting(Fault::pointer)
                .contains(pointer);
    }

    @Test
    void tooShortForItsMitresIsRefused() {
        assertThat(new JobReader()
                        .read(text("60", "", "").replace("\"16\"", "\"3-7/8\""))
                        .faults())
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple("/parts/0/ends", "conflict"));
    }

    /** One of a stick is spoiled: it alone is made again. */
    @Test
    void onlyTheSpoiledOneIsMadeAgain() {
        Job job = job("60", TURNED);
        CuttingPlan plan = plan(job);
        List<Integer> all = IntStream.rangeClosed(
                        1, plan.derived().cutSequence().size())
                .boxed()
                .toList();
        Replan replan = new Optimizer()
                .replan(
                        job,
                        plan,
                        new Worklog(
                                plan.header().jobHash(),
                                all,
                                List.of(new Worklog.Spoiled("rail", 2, null)),
                                List.of(),
                                List.of()));
        assertThat(replan.job().parts())
                .singleElement()
                .satisfies(part -> assertThat(part.shaping().ends().stick()).isEqualTo(1));
        assertThat(PlanChecker.check(replan.job(), replan.plan())).isEmpty();
        assertThat(replan.plan().cost()).hasToString("5.00 USD");
    }

    /** Random frames of all angles, ripped and milled or not: every plan passes the checker, which saws every sequence. */
    @Test
    void randomFramesAreSawnToTheirParts() {
        List<String> angles = List.of("22.5", "30", "45", "60");
        for (int seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            StringBuilder parts = new StringBuilder();
            for (int p = 0; p < 1 + random.nextInt(4); p++) {
                int stick = 1 + random.nextInt(4);
                parts.append(p == 0 ? "" : ", ")
                        .append("{\"id\": \"p" + p + "\", \"quantity\": " + stick * (1 + random.nextInt(4)))
                        .append(", \"length\": \"" + (9 + random.nextInt(12)) + "-3/16\", \"width\": \""
                                + (1 + random.nextInt(2)) + "-1/4\", \"thickness\": \"3/4\"")
                        .append(random.nextBoolean() ? ", \"allowance\": \"skim\"" : "")
                        .append(
                                random.nextInt(4) == 0
                                        ? ""
                                        : ", \"ends\": {\"angle\": \"" + angles.get(random.nextInt(4))
                                                + "\", \"stick\": " + stick + ", \"flip\": " + random.nextBoolean()
                                                + "}")
                        .append("}");
            }
            Job job = new JobReader()
                    .read("{\"material\": \"ash\", \"goal\": \""
                            + List.of("cost", "boards", "waste").get(random.nextInt(3))
                            + "\", \"shop\": {\"kerf\": {\"crosscut\": \"3/32\", \"rip\": \"1/8\"}, \"boardTrim\": {\"start\": \"1/2\"}},"
                            + " \"allowances\": {\"skim\": {\"length\": \"1/2\", \"width\": \"1/8\"}}, \"parts\": ["
                            + parts + "],"
                            + " \"stock\": [{\"id\": \"s\", \"length\": \"" + (90 + random.nextInt(40))
                            + "\", \"width\": \"" + (3 + random.nextInt(4))
                            + "\", \"thickness\": \"3/4\", \"price\": {\"amount\": \"9\"}}],"
                            + " \"effort\": {\"work\": 20000}}")
                    .orThrow();
            CuttingPlan plan = new Optimizer().plan(job);
            assertThat(plan.unplaced()).as("seed " + seed).isEmpty();
            assertThat(PlanChecker.check(job, plan)).as("seed " + seed).isEmpty();
        }
    }
}
