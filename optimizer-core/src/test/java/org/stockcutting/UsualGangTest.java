package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobHash;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.JobWriter;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.StepKind;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Warning;

/**
 * Milled parts that are too short for the shop's machines stay together unless the parts list says otherwise. A planer's shortest piece of
 * about 12 in is what magazines and manuals give; that short parts are planed as one and cut apart afterwards is common practice, no
 * source. Worked by hand: a peg of 5 in is 6 in in the rough; two with a cut of 1/8 in are 11-1/8 in, three 16-1/4 in.
 */
class UsualGangTest {

    private static String text(int quantity, String machines, String more) {
        return """
                {"name": "pegs", "material": "ash", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}, "boardTrim": {"start": "1/2", "end": "1/2"}},
                 "machines": {MACHINES},
                 "parts": [{"id": "peg", "quantity": QUANTITY, "length": "5", "width": "1-3/4", "thickness": "3/4", "allowance": "milled"MORE}],
                 "stock": [{"id": "board", "length": "60", "width": "1-7/8", "thickness": "15/16", "price": {"amount": "5.00", "per": "piece"}}],
                 "effort": {"work": 50000}}
                """.replace("QUANTITY", Integer.toString(quantity))
                .replace("MACHINES", machines)
                .replace("MORE", more);
    }

    private static Job job(int quantity, String machines, String more) {
        return new JobReader().read(text(quantity, machines, more)).orThrow();
    }

    private static int gang(Job job) {
        return job.parts().get(0).gang();
    }

    private static final String PLANER = "\"planer\": {\"shortest\": \"12\"}";

    /** The least number that reaches the machine's least length and comes out even; a blank of 36-7/8 in is not made for a planer of 9 in. */
    @ParameterizedTest
    @CsvSource({
        "12, 12, 3",
        "12, 11-1/8, 2",
        "12, 11-9/64, 3",
        "12, 6, 1",
        "12, 6-1/64, 2",
        "8, 12, 4",
        "7, 12, 7",
        "7, 9, 1",
        "2, 12, 1",
        "11, 12, 1"
    })
    void asManyAsReachTheMachine(int quantity, String shortest, int gang) {
        assertThat(gang(job(quantity, PLANER.replace("12", shortest), ""))).isEqualTo(gang);
    }

    @Test
    void theAnswerSaysSo() {
        JobReading reading = new JobReader().read(text(12, PLANER, ""));
        assertThat(reading.defaults()).containsEntry("/parts/peg/gang", "3");
        Job job = reading.orThrow();
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        assertThat(plan.derived().warnings())
                .filteredOn(warning -> warning.code().equals("ganged"))
                .extracting(Warning::text)
                .containsExactly(
                        "peg by itself is 6 in long in the rough, and the planer takes nothing under 12 in: 3 stay in one"
                                + " blank until they are planed and ripped. Give it gang 1 to have each by itself.");
        // Nothing that is planed is too short for it.
        assertThat(plan.derived().cutSequence())
                .filteredOn(step -> step.kind() == StepKind.PLANE)
                .isNotEmpty()
                .noneMatch(step -> String.valueOf(step.caution()).contains("horter than the planer"));
        CuttingPlan silent = Altered.without(plan, "ganged");
        assertThat(PlanChecker.check(job, silent)).extracting(Violation::cause).containsExactly("warning");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12 | , \"gang\": 1 | give it gang 3",
                "12 | , \"gang\": 2 | give it gang 3",
                "12 | , \"spares\": 1 | take its spares off",
                "6 | , \"group\": {\"name\": \"g\", \"rule\": \"same-board\"} | take its group off",
                "12 | , \"fit\": \"after-assembly\" | take its fit after-assembly off",
                "11 | '' | make two lines of it, 3 with gang 3 and 8 with gang 4",
                "2 | '' | add copies until they come out in gangs of 3"
            })
    void whereNothingIsDoneTheWayOutIsTold(int quantity, String more, String wayOut) {
        Job job = job(quantity, PLANER, more);
        assertThat(gang(job)).isLessThan(3);
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        assertThat(plan.derived().warnings())
                .filteredOn(warning -> warning.code().equals("shorter-than-machine"))
                .singleElement()
                .satisfies(warning -> assertThat(warning.text()).contains(wayOut));
        assertThat(PlanChecker.check(job, Altered.without(plan, "shorter-than-machine")))
                .extracting(Violation::cause)
                .containsExactly("warning");
    }

    /** What the tool wrote is read as it was meant: 1 where it was said, nothing where the usual number is said by silence or stands there. */
    @Test
    void documentsSayWhatSilenceWouldNot() {
        for (Job job :
                List.of(job(12, PLANER, ""), job(12, PLANER, ", \"gang\": 1"), job(12, PLANER, ", \"gang\": 6"))) {
            Job again = new JobReader().read(JobWriter.write(job)).orThrow();
            assertThat(again).isEqualTo(job);
            assertThat(JobHash.of(again)).isEqualTo(JobHash.of(job));
            assertThat(CsvTables.parts(job)).contains("gang");
        }
        assertThat(JobWriter.write(job(12, "", ""))).doesNotContain("gang");
        assertThat(CsvTables.parts(job(12, "", ""))).doesNotContain("gang");
    }

    /** A jointer counts where an edge or a face is straightened, a planer where the thickness is brought to size. */
    @Test
    void onlyMachinesThatThePartGoesThroughCount() {
        String bare = text(12, PLANER, "")
                .replace("\"parts\"", "\"allowances\": {\"milled\": {\"length\": \"1\"}}, \"parts\"");
        assertThat(gang(new JobReader().read(bare).orThrow())).isEqualTo(1);
        String wide = text(12, "\"jointer\": {\"shortest\": \"12\"}", "")
                .replace(
                        "\"parts\"",
                        "\"allowances\": {\"milled\": {\"length\": \"1\", \"width\": \"1/8\"}}, \"parts\"");
        assertThat(gang(new JobReader().read(wide).orThrow())).isEqualTo(3);
        assertThat(gang(job(12, "\"jointer\": {\"shortest\": \"11\"}, \"planer\": {\"shortest\": \"17\"}", "")))
                .isEqualTo(4);
        // In a program the gang is what the record says.
        Part part = job(12, PLANER, ", \"gang\": 1").parts().get(0);
        assertThat(part.withGang(3).gang()).isEqualTo(3);
    }

    /** Left and right ones stay in pairs. */
    @Test
    void pairsComeInEvenNumbers() {
        String marked =
                ", \"hand\": \"pairs\", \"marks\": [{\"purpose\": \"dowel\", \"fromEnd\": \"1\", \"fromEdge\": \"1/2\"}]";
        assertThat(gang(job(12, PLANER, marked))).isEqualTo(4);
    }
}
