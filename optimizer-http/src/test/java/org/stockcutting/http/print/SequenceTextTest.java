package org.stockcutting.http.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.http.HandMade;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;

class SequenceTextTest {

    private static final String MILLED = """
            {"name": "Slats", "unit": "in", "precision": "1/16", "currency": "USD", "material": "oak",
             "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}, "boardTrim": {"start": "1/2"}},
             "parts": [{"id": "slat", "quantity": 4, "length": "20", "width": "3", "thickness": "3/4", "allowance": "milled"},
                       {"id": "top", "quantity": 1, "length": "30", "width": "9", "thickness": "3/4",
                        "make": {"as": "glue-up", "staves": {"min": "3", "max": "5"}}}],
             "stock": [{"id": "oak8", "length": "96", "width": "7", "thickness": "1-1/16",
                        "price": {"amount": "30", "per": "piece"}}]}
            """;

    @Test
    void stepsStandUnderTheSettingTheyAreMadeAt() {
        Job job = HandMade.job();
        CuttingPlan plan = HandMade.plan(job);
        String text = text(job, plan);
        assertThat(text)
                .contains("Square the ends and edges")
                .containsPattern("Set the stop to 60:\\R +step +board +cut at +makes +in hand +spare");
        assertThat(text.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
    }

    /** A gang goes by all its numbers until it is cut apart. */
    @Test
    void gangsAreNamedWhole() {
        Job job = new JobReader().read("""
                {"material": "ash", "parts": [{"id": "peg", "quantity": 6, "length": "6", "width": "1-3/4", "thickness": "3/4",
                  "allowance": "milled", "gang": 3}],
                 "stock": [{"id": "s", "length": "60", "width": "2", "thickness": "1", "price": {"amount": "5"}}]}
                """).orThrow();
        CuttingPlan plan = new Optimizer().plan(job);
        String text = text(job, plan);
        assertThat(text).contains("peg #1-3", "peg #4-6", "Set the stop to 6:");
        assertThat(text.substring(text.indexOf("Set the stop to 6:"))).contains("peg #1 ", "peg #2 ", "peg #6 ");
        assertThat(new PlanText(job).print(plan)).contains("peg #1-3");
    }

    /** The order in which trade articles mill wood; common practice, no source. */
    @Test
    void milledAndGluedPartsAreWalkedToTheLastTrim() {
        Job job = new JobReader().read(MILLED).orThrow();
        CuttingPlan plan = new Optimizer().plan(job);
        String text = text(job, plan);
        List<String> order = List.of(
                "Cut roughly to length",
                "Joint one face and one edge",
                "Set the planer to ",
                "Let the wood rest",
                "Set the planer to 3/4",
                "Set the fence to 3:",
                "Set the stop to 20:");
        int at = 0;
        for (String line : order) {
            int found = text.indexOf(line, at);
            assertThat(found).as("%s after %d in%n%s", line, at, text).isNotNegative();
            at = found;
        }
        assertThat(text.indexOf("Glue up:")).isGreaterThan(text.indexOf("Let the wood rest"));
        assertThat(text.indexOf("Set the stop to 30:")).isGreaterThan(text.indexOf("Glue up:"));
        assertThat(text).contains("slat #1-4").contains("top #1");
    }

    @Test
    void shapedPartsAreMarkedBoredTaperedAndFittedUnderTheirHeadings() {
        String stand = MILLED.replace(
                        "\"allowance\": \"milled\"}",
                        "\"taper\": {\"foot\": \"2\", \"faces\": \"one\"}, \"hand\": \"pairs\","
                                + " \"marks\": [{\"purpose\": \"peg\", \"fromEnd\": \"4\", \"fromEdge\": \"1-1/2\","
                                + " \"bore\": \"3/8\"}], \"allowance\": \"milled\"}")
                .replace("\"thickness\": \"3/4\",\n", "\"thickness\": \"3/4\", \"fit\": \"after-assembly\",\n");
        Job job = new JobReader().read(stand).orThrow();
        String text = text(job, new Optimizer().plan(job));
        List<String> order = List.of(
                "Put these lengths on a story stick and mark them from the reference end:",
                "slat #1, 3  4  peg, left",
                "slat #2, 4  4  peg, right",
                "Set the marking gauge to 1-1/2, its fence against the face edge:",
                "Put the 3/8 bit into the drill and bore:",
                "peg, left, 1-1/2 from the edge, through",
                "Taper, now that everything is marked and bored:",
                "slat #1, 3  5  left, to a foot of 2, one face",
                "Mark the length from the work once it stands, and cut to the mark:",
                "top #1");
        int at = 0;
        for (String line : order) {
            int found = text.indexOf(line, at);
            assertThat(found).as("%s after %d in%n%s", line, at, text).isNotNegative();
            at = found;
        }
    }

    private static String text(Job job, CuttingPlan plan) {
        TextPage page = new TextPage();
        new SequenceText(job, new PrintedLengths(job.writing()))
                .print(plan.derived().cutSequence(), plan.derived().setUps(), page);
        return page.toString();
    }
}
