package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobWriter;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.Violation;

/**
 * Tapered parts that come in pairs from one straight blank. Top 3-1/2, foot 1-3/4, length 17, start 4-1/4: top and foot and 1-3/4 times
 * 4-1/4 over 12-3/4 are 5.8333 in, and the cut. Common practice, no source; the same figures as the note that such a pair could be made.
 */
class NestedTaperTest {

    private static String text(String taper, String more) {
        return """
                {"name": "legs", "material": "oak", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
                 "parts": [{"id": "leg", "quantity": 4, "length": "17", "width": "3-1/2", "thickness": "3-1/2",
                            "taper": {"foot": "1-3/4"TAPER}MORE}],
                 "stock": [{"id": "s", "length": "35", "width": "6", "thickness": "3-1/2", "price": {"amount": "5.00"}}],
                 "effort": {"work": 100000}}
                """.replace("TAPER", taper).replace("MORE", more);
    }

    private static Job job(String more) {
        return new JobReader().read(text(", \"nest\": true", more)).orThrow();
    }

    /** 6 in of width take one leg of 3-1/2 or a pair of 5.9583: two boards instead of four pieces on them... worked out in each line. */
    @Test
    void twoShareABlank() {
        Job job = job("");
        CuttingPlan plan = new Optimizer().plan(job);
        // 35 in give two blanks of 17 in and the cut between, each for two legs: one board; one by one it is two
        // boards.
        assertThat(plan.cost()).hasToString("5.00 USD");
        assertThat(plan.header().status()).isEqualTo(Status.OPTIMAL);
        List<PlacedPiece> pieces = plan.layouts().get(0).pieces();
        assertThat(pieces).flatExtracting(PlacedPiece::numbers).containsExactlyInAnyOrder(1, 3);
        // 5.8333.. in to the next nanometre, and 1/8 in: 148,166,667 nm and 3,175,000 nm.
        assertThat(pieces).allMatch(piece -> piece.width().equals(Length.ofNanometres(151_341_667L)));
        assertThat(plan.derived().warnings())
                .noneMatch(warning -> warning.code().equals("tapered-pair"));
        Job single = new JobReader().read(text("", "")).orThrow();
        assertThat(new Optimizer().plan(single).cost()).hasToString("10.00 USD");
        // Wood of the parts is at most the wood that was bought.
        assertThat(plan.derived().yield().ratio()).isLessThan(java.math.BigDecimal.ONE);
        assertThat(plan.derived().yield().allowance().cubicNanometres().signum())
                .isPositive();
    }

    @Test
    void theFirstTaperPartsThem() {
        Job job = job(", \"marks\": [{\"purpose\": \"rail\", \"fromEnd\": \"2\", \"fromEdge\": \"1\"}]");
        CuttingPlan plan = new Optimizer().plan(job);
        List<SequenceStep> shaped = plan.derived().cutSequence().stream()
                .filter(step -> step.shape() != null && step.piece().number() <= 2)
                .toList();
        assertThat(shaped)
                .extracting(SequenceStep::kind)
                .filteredOn(kind -> kind == StepKind.TAPER)
                .hasSize(2);
        assertThat(shaped)
                .extracting(SequenceStep::kind)
                .filteredOn(kind -> kind == StepKind.MARK)
                .hasSize(4);
        SequenceStep parting = shaped.stream()
                .filter(step -> step.kind() == StepKind.TAPER)
                .findFirst()
                .orElseThrow();
        assertThat(parting.piece().number()).isEqualTo(1);
        assertThat(parting.caution()).contains("parts two");
        List<SequenceStep> steps = plan.derived().cutSequence();
        // The second taper cannot come before the two are parted, nor can either be left out.
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).kind() == StepKind.TAPER) {
                List<SequenceStep> fewer = new ArrayList<>(steps);
                fewer.remove(i);
                CuttingPlan wrong = Altered.steps(plan, fewer);
                assertThat(PlanChecker.check(job, wrong))
                        .extracting(Violation::cause)
                        .contains("sequence");
            }
        }
    }

    /** Milled as one: planed, ripped to the width of the pair, cut to length once. */
    @Test
    void aPairIsMilledAsOne() {
        Job job = new JobReader()
                .read(text(", \"nest\": true", ", \"allowance\": \"milled\"")
                        .replace(
                                "\"length\": \"35\", \"width\": \"6\", \"thickness\": \"3-1/2\"",
                                "\"length\": \"36-1/8\", \"width\": \"6-1/8\", \"thickness\": \"3-3/4\""))
                .orThrow();
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.cost()).hasToString("5.00 USD");
        List<SequenceStep> steps = plan.derived().cutSequence();
        assertThat(steps.stream().filter(step -> step.kind() == StepKind.JOINT)).hasSize(2);
        assertThat(steps.stream().filter(step -> step.kind() == StepKind.TAPER)).hasSize(4);
        assertThat(steps.stream()
                        .filter(step ->
                                step.kind() == StepKind.RIP && step.cut().to() == null))
                .hasSize(2)
                .allMatch(step -> step.cut().reading().equals(Length.ofNanometres(151_341_667L)));
    }

    @Test
    void documentsCarryIt() {
        Job job = job("");
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow()).isEqualTo(job);
        CuttingPlan plan = new Optimizer().plan(job);
        String text = new PlanWriter(job).write(plan, new TreeMap<>());
        assertThat(text).contains("\"gang\": 2");
        assertThat(new PlanReader(job).read(text).orThrow().layouts()).isEqualTo(plan.layouts());
    }

    @ParameterizedTest
    @CsvSource({
        "', \"faces\": \"four\"', ''",
        "', \"start\": \"9\"', ''",
        "'', ', \"spares\": 1'",
        "'', ', \"hand\": \"pairs\"'",
        "'', ', \"group\": {\"name\": \"g\", \"rule\": \"same-board\"}'"
    })
    void whatCannotBeNestedIsRefused(String taper, String more) {
        assertThat(new JobReader().read(text(taper + ", \"nest\": true", more)).faults())
                .extracting(Fault::pointer, Fault::code)
                .contains(tuple("/parts/0/taper/nest", "conflict"));
        String odd = text(", \"nest\": true", "").replace("\"quantity\": 4", "\"quantity\": 3");
        assertThat(new JobReader().read(odd).faults())
                .extracting(Fault::pointer)
                .contains("/parts/0/taper/nest");
    }
}
