package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobWriter;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Worklog;

/**
 * Short milled parts that stay together in one blank. Worked by hand: three pegs of 6 in with two cuts of 1/8 in between and 1 in of
 * allowance are 19-1/4 in; four such blanks and three cuts are 77-3/8 in. Each by itself they would be twelve times 7 in and eleven
 * cuts, 85-3/8 in. That short parts stay together until they are planed is common practice; a planer's shortest piece of about 12 in is
 * what magazines and manuals give.
 */
class GangTest {

    private static String text(String board, String more) {
        return """
                {"name": "pegs", "material": "ash", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
                 "parts": [{"id": "peg", "quantity": 12, "length": "6", "width": "1-3/4", "thickness": "3/4", "allowance": "milled",
                            "gang": 3MORE}],
                 "stock": [{"id": "board", "length": "BOARD", "width": "1-7/8", "thickness": "15/16",
                            "price": {"amount": "5.00", "per": "piece"}}],
                 "effort": {"work": 100000}}
                """.replace("BOARD", board).replace("MORE", more);
    }

    private static Job job(String board) {
        return new JobReader().read(text(board, "")).orThrow();
    }

    @Test
    void oneAllowanceAGang() {
        Job job = job("77-3/8");
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.header().status()).isEqualTo(Status.OPTIMAL);
        assertThat(plan.cost()).hasToString("5.00 USD");
        List<PlacedPiece> pieces = plan.layouts().get(0).pieces();
        assertThat(pieces).hasSize(4).allMatch(piece -> piece.length().equals(Length.inches("19.25")));
        assertThat(pieces).flatExtracting(PlacedPiece::numbers).containsExactlyInAnyOrder(1, 4, 7, 10);
        // Each by itself they do not come from this board.
        Job single = new JobReader()
                .read(text("77-3/8", "").replace("\"gang\": 3", "\"gang\": 1"))
                .orThrow();
        assertThat(new Optimizer().plan(single).cost()).hasToString("10.00 USD");
        // A sixteenth less, and four gangs do not come from one board either; nothing is lost to what the checker
        // proves.
        CuttingPlan shorter = new Optimizer().plan(job("77-5/16"));
        assertThat(shorter.cost()).hasToString("10.00 USD");
        assertThat(shorter.header().status()).isEqualTo(Status.OPTIMAL);
    }

    /** Roughly cut, jointed, planed, rested, planed, ripped as one; cut apart last, each at the same stop. */
    @Test
    void theSequenceKeepsThemTogetherUntilTheyAreRipped() {
        Job job = job("77-3/8");
        CuttingPlan plan = new Optimizer().plan(job);
        List<SequenceStep> own = plan.derived().cutSequence().stream()
                .filter(step -> step.piece() != null && step.piece().number() <= 3)
                .filter(step -> step.kind() != StepKind.ROUGH_CROSSCUT)
                .toList();
        assertThat(own)
                .extracting(SequenceStep::kind, step -> step.piece().number())
                .containsExactly(
                        tuple(StepKind.JOINT, 1),
                        tuple(StepKind.PLANE, 1),
                        tuple(StepKind.PLANE, 1),
                        tuple(StepKind.RIP, 1),
                        tuple(StepKind.CROSSCUT, 1),
                        tuple(StepKind.CROSSCUT, 2),
                        tuple(StepKind.CROSSCUT, 3));
        SequenceStep apart = own.get(4);
        assertThat(apart.setUp()).isEqualTo(new SequenceStep.SetUp("crosscut", Length.inches("6")));
        assertThat(apart.cut().on().length()).isEqualTo(Length.inches("19.25"));
        assertThat(apart.cut().left().length()).isEqualTo(Length.inches("13.125"));
        assertThat(apart.cut().slack()).isEqualTo(Length.inches("1"));
        // The last one: 6 in and the allowance of the gang.
        assertThat(own.get(6).cut().on().length()).isEqualTo(Length.inches("7"));
    }

    @Test
    void documentsCarryTheGang() {
        Job job = job("96");
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow()).isEqualTo(job);
        assertThat(CsvTables.parts(job)).contains("gang");
        CuttingPlan plan = new Optimizer().plan(job);
        String text = new PlanWriter(job).write(plan, new TreeMap<>());
        assertThat(text).contains("\"gang\": 3");
        assertThat(new PlanReader(job).read(text).orThrow().layouts()).isEqualTo(plan.layouts());
        assertThat(new PlanReader(job)
                        .read(text.replace("\"gang\": 3", "\"gang\": 2"))
                        .faults())
                .extracting(Fault::code)
                .contains("inconsistent");
        assertThat(CsvTables.pieces(job, plan)).contains("peg,4,3,");
    }

    @ParameterizedTest
    @CsvSource({
        "'\"gang\": 5', ''",
        "'\"gang\": 3', ', \"spares\": 1'",
        "'\"gang\": 3', ', \"group\": {\"name\": \"g\", \"rule\": \"same-board\"}'",
        "'\"gang\": 3', ', \"fit\": \"after-assembly\"'",
        "'\"gang\": 3', ', \"hand\": \"pairs\"'"
    })
    void whatOnlySinglePiecesCanGiveIsRefused(String gang, String more) {
        String wrong = text("96", more).replace("\"gang\": 3", gang);
        assertThat(new JobReader().read(wrong).faults())
                .extracting(Fault::pointer, Fault::code)
                .contains(tuple("/parts/0/gang", "conflict"));
    }

    @Test
    void onlyWhatIsMilledIsGanged() {
        String wrong = text("96", "").replace("\"allowance\": \"milled\",", "");
        assertThat(new JobReader().read(wrong).faults())
                .extracting(Fault::pointer, Fault::code)
                .contains(tuple("/parts/0/gang", "conflict"));
        assertThat(new JobReader()
                        .read(text("96", "").replace("\"gang\": 3", "\"gang\": 0"))
                        .faults())
                .extracting(Fault::pointer, Fault::code)
                .contains(tuple("/parts/0/gang", "not-positive"));
    }

    /** What is not so is told apart: wrong first numbers, wrong sizes, steps that cut apart too early or elsewhere. */
    @Test
    void theCheckerFollowsGangs() {
        Job job = job("96");
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        Layout layout = plan.layouts().get(0);
        List<PlacedPiece> pieces = new ArrayList<>(layout.pieces());
        PlacedPiece first = pieces.get(0);
        pieces.set(
                0,
                new PlacedPiece(
                        first.part(),
                        first.numbers().stream().map(n -> n + 1).toList(),
                        first.members(),
                        first.x(),
                        first.y(),
                        first.length(),
                        first.width(),
                        first.turned()));
        assertThat(causes(job, withLayout(plan, layout, pieces))).contains("number");
        List<SequenceStep> steps = plan.derived().cutSequence();
        for (int i = 0; i < steps.size(); i++) {
            SequenceStep step = steps.get(i);
            if (step.kind() == StepKind.CROSSCUT && step.cut().to() == null) {
                List<SequenceStep> other = new ArrayList<>(steps);
                SequenceStep.SawCut cut = step.cut();
                SequenceStep.SawCut shifted = new SequenceStep.SawCut(
                        cut.direction(),
                        cut.on(),
                        cut.reading().plus(Length.inches("0.5")),
                        null,
                        cut.left(),
                        cut.slack());
                other.set(
                        i,
                        new SequenceStep(
                                step.step(),
                                step.kind(),
                                step.setUp(),
                                step.board(),
                                shifted,
                                step.piece(),
                                null,
                                null,
                                null));
                assertThat(causes(job, Altered.steps(plan, other)))
                        .as("step " + i)
                        .contains("sequence");
                other.set(i, null);
                other.removeIf(java.util.Objects::isNull);
                List<SequenceStep> fewer = new ArrayList<>();
                other.forEach(one -> fewer.add(one.numbered(fewer.size() + 1)));
                assertThat(causes(job, Altered.steps(plan, fewer)))
                        .as("without step " + i)
                        .contains("sequence");
            }
        }
    }

    private static List<String> causes(Job job, CuttingPlan plan) {
        return PlanChecker.check(job, plan).stream().map(Violation::cause).toList();
    }

    private static CuttingPlan withLayout(CuttingPlan plan, Layout old, List<PlacedPiece> pieces) {
        List<Layout> layouts = new ArrayList<>(plan.layouts());
        layouts.set(
                layouts.indexOf(old),
                new Layout(
                        old.stock(),
                        old.repeat(),
                        old.length(),
                        old.width(),
                        old.thickness(),
                        pieces,
                        old.cuts(),
                        old.offcuts()));
        return new CuttingPlan(
                plan.header(),
                plan.cost(),
                plan.objective(),
                layouts,
                plan.unplaced(),
                plan.certificate(),
                List.of(),
                plan.derived());
    }

    /** One of a gang is spoiled: it alone is made again, cut apart already or not; all of them are, and the gang is. */
    @Test
    void onlyWhatIsSpoiledIsMadeAgain() {
        Job job = job("77-3/8");
        CuttingPlan plan = new Optimizer().plan(job);
        int first = plan.derived().cutSequence().stream()
                .filter(step -> step.kind() == StepKind.ROUGH_CROSSCUT)
                .findFirst()
                .orElseThrow()
                .step();
        int number = plan.derived().cutSequence().get(first - 1).piece().number();
        Replan replan = spoiled(job, plan, first, number + 1);
        assertThat(replan.lines())
                .extracting(
                        Replan.Line::line,
                        Replan.Line::part,
                        line -> line.numbers().size())
                .containsExactly(tuple("peg", "peg", 9), tuple("peg again", "peg", 1));
        assertThat(replan.lines().get(1).numbers()).containsExactly(number + 1);
        assertThat(replan.finished())
                .singleElement()
                .satisfies(line -> assertThat(line.numbers()).containsExactly(number, number + 2));
        assertThat(replan.notes()).anyMatch(note -> note.contains("only what is spoiled is made again"));
        assertThat(replan.job().parts())
                .extracting(Part::id, Part::quantity, Part::gang)
                .containsExactly(tuple("peg", 9, 3), tuple("peg again", 1, 1));
        assertThat(PlanChecker.check(replan.job(), replan.plan())).isEmpty();
        // The board of 77-3/8 in has given one of its four gangs, and the others take all that is left of it.
        assertThat(replan.plan().cost()).hasToString("5.00 USD");
        Replan two = spoiled(job, plan, first, number, number + 2);
        assertThat(two.job().parts())
                .extracting(Part::id, Part::quantity, Part::gang)
                .containsExactly(tuple("peg", 9, 3), tuple("peg again", 2, 2));
        assertThat(PlanChecker.check(two.job(), two.plan())).isEmpty();
        Replan all = spoiled(job, plan, first, number, number + 1, number + 2);
        assertThat(all.lines())
                .singleElement()
                .satisfies(line -> assertThat(line.numbers()).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12));
        assertThat(all.finished()).isEmpty();
        Replan good = spoiled(job, plan, first);
        assertThat(good.finished())
                .singleElement()
                .satisfies(line -> assertThat(line.numbers()).containsExactly(number, number + 1, number + 2));
        assertThat(good.plan().cost()).hasToString("0.00 USD");
    }

    /** Five spoiled out of several gangs of three come in two blanks, three and two. */
    @Test
    void whatIsSpoiledIsSharedOutEvenly() {
        Job job = job("96");
        CuttingPlan plan = new Optimizer().plan(job);
        int last = plan.derived().cutSequence().stream()
                .filter(step -> step.kind() == StepKind.ROUGH_CROSSCUT)
                .mapToInt(SequenceStep::step)
                .max()
                .orElseThrow();
        Replan replan = spoiled(job, plan, last, 1, 2, 5, 8, 11);
        assertThat(replan.job().parts())
                .extracting(Part::id, Part::quantity, Part::gang)
                .containsExactlyInAnyOrder(tuple("peg again", 3, 3), tuple("peg again 2", 2, 2));
        assertThat(replan.finished())
                .singleElement()
                .satisfies(line -> assertThat(line.numbers()).containsExactly(3, 4, 6, 7, 9, 10, 12));
        assertThat(PlanChecker.check(replan.job(), replan.plan())).isEmpty();
    }

    private static Replan spoiled(Job job, CuttingPlan plan, int upTo, int... numbers) {
        List<Worklog.Spoiled> bad = java.util.Arrays.stream(numbers)
                .mapToObj(number -> new Worklog.Spoiled("peg", number, null))
                .toList();
        List<Integer> done =
                java.util.stream.IntStream.rangeClosed(1, upTo).boxed().toList();
        return new Optimizer().replan(job, plan, new Worklog(plan.header().jobHash(), done, bad, List.of(), List.of()));
    }

    /** Plans of random jobs with gangs pass the checker, which saws every sequence; so does what is left after a mishap. */
    @Test
    void randomJobsAreSawnToTheirParts() {
        for (int seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            StringBuilder parts = new StringBuilder();
            for (int p = 0; p < 1 + random.nextInt(4); p++) {
                int gang = 1 + random.nextInt(5);
                boolean marked = random.nextBoolean();
                boolean pairs = marked && gang % 2 == 0 && random.nextBoolean();
                parts.append(p == 0 ? "" : ", ")
                        .append("{\"id\": \"p" + p + "\", \"quantity\": " + gang * (1 + random.nextInt(6)))
                        .append(", \"length\": \"" + (3 + random.nextInt(9)) + "\", \"width\": \""
                                + (1 + random.nextInt(3)))
                        .append("\", \"thickness\": \"3/4\", \"allowance\": \""
                                + (random.nextBoolean() ? "milled" : "bare"))
                        .append("\", \"gang\": " + gang + (pairs ? ", \"hand\": \"pairs\"" : ""))
                        .append(
                                !marked
                                        ? ""
                                        : ", \"marks\": [{\"purpose\": \"dowel\", \"fromEnd\": \"1\", \"fromEdge\": \"1/2\"}]")
                        .append("}");
            }
            Job job = new JobReader()
                    .read("{\"material\": \"ash\", \"sets\": " + (1 + random.nextInt(3)) + ", \"goal\": \""
                            + List.of("cost", "boards", "waste").get(random.nextInt(3))
                            + "\", \"shop\": {\"kerf\": {\"crosscut\": \"1/8\", \"rip\": \"3/32\"}, \"boardTrim\": {\"start\": \"1/2\"}},"
                            + " \"allowances\": {\"bare\": {\"thickness\": \"3/16\"}}, \"parts\": [" + parts + "],"
                            + " \"stock\": [{\"id\": \"s\", \"length\": \"" + (70 + random.nextInt(40))
                            + "\", \"width\": \"" + (4 + random.nextInt(5))
                            + "\", \"thickness\": \"15/16\", \"price\": {\"amount\": \"9\"}}],"
                            + " \"onHand\": [{\"id\": \"rack\", \"length\": \"41\", \"width\": \"4-1/4\", \"thickness\": \"1\","
                            + " \"zones\": [{\"from\": \"20\", \"to\": \"21\"}]}], \"effort\": {\"work\": 20000}}")
                    .orThrow();
            CuttingPlan plan = new Optimizer().plan(job);
            assertThat(plan.unplaced()).as("seed " + seed).isEmpty();
            assertThat(PlanChecker.check(job, plan)).as("seed " + seed).isEmpty();
            mishap(job, plan, random, "seed " + seed);
        }
    }

    /** Half way through up to three cut copies are spoiled: they and what is not cut yet are made, each once, and nothing else. */
    private static void mishap(Job job, CuttingPlan plan, Random random, String seed) {
        List<SequenceStep> steps = plan.derived().cutSequence();
        int upTo = 1 + random.nextInt(steps.size());
        List<Integer> done =
                java.util.stream.IntStream.rangeClosed(1, upTo).boxed().toList();
        String hash = plan.header().jobHash();
        Replan before = new Optimizer().replan(job, plan, new Worklog(hash, done, List.of(), List.of(), List.of()));
        List<Worklog.Spoiled> bad = new ArrayList<>();
        for (Replan.Finished line : before.finished()) {
            for (int number : line.numbers()) {
                if (bad.size() < 3 && random.nextInt(4) == 0) {
                    bad.add(new Worklog.Spoiled(line.part(), number, null));
                }
            }
        }
        Replan replan = new Optimizer().replan(job, plan, new Worklog(hash, done, bad, List.of(), List.of()));
        List<String> all = new ArrayList<>();
        replan.finished().forEach(line -> line.numbers().forEach(number -> all.add(line.part() + number)));
        replan.lines().forEach(line -> line.numbers().forEach(number -> all.add(line.part() + number)));
        List<String> wanted = new ArrayList<>();
        job.parts()
                .forEach(part -> java.util.stream.IntStream.rangeClosed(1, job.demand(part))
                        .forEach(number -> wanted.add(part.id() + number)));
        assertThat(all).as(seed).containsExactlyInAnyOrderElementsOf(wanted);
        assertThat(replan.lines().stream()
                        .mapToInt(line -> line.numbers().size())
                        .sum())
                .as(seed)
                .isEqualTo(before.lines().stream()
                                .mapToInt(line -> line.numbers().size())
                                .sum()
                        + bad.size());
        if (replan.job() != null) {
            assertThat(replan.plan().unplaced()).as(seed).isEmpty();
            assertThat(PlanChecker.check(replan.job(), replan.plan())).as(seed).isEmpty();
        }
    }
}
