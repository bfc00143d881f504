package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Enough;
import org.stockcutting.plan.Unplaced;

/** The document that tells whether boards are enough: its field table and what is written are the same. */
class EnoughDocumentTest {

    private static final Job JOB = JobBuilder.inches("Bench")
            .material("oak")
            .goal(Goal.WASTE)
            .part("rail", 3, "40", "5", "1")
            .measured("m1", "60", "5", "1")
            .measured("m2", "60", "5", "1")
            .build();

    private static final Enough ENOUGH = new Enough(List.of(
            new Enough.Step(
                    "m1",
                    List.of(new Unplaced("rail", 2, Unplaced.Reason.STOCK_EXHAUSTED, "40", "19-7/8", "add a board")),
                    List.of(),
                    Length.inches("19.875")),
            new Enough.Step("m2", List.of(), List.of("m1"), Length.ZERO)));

    @Test
    void everyRowOfTheTableIsWrittenAndNothingElse() {
        ObjectNode doc = Documents.parse(EnoughWriter.write(JOB, ENOUGH));
        Map<String, String> written = Documents.patterns(doc);
        assertThat(written.keySet())
                .containsExactlyInAnyOrderElementsOf(
                        EnoughFields.ENOUGH.all().stream().map(Field::pointer).toList());
        assertThat(doc.at("/firstEnough").asText()).isEqualTo("m2");
        assertThat(doc.at("/steps/0/longestLeft").asText()).isEqualTo("19-7/8");
        assertThat(doc.at("/steps/1/longestLeft").asText()).isEqualTo("0");
    }

    @Test
    void neededRowsAreThereWhenNotEnough() {
        ObjectNode doc = Documents.parse(
                EnoughWriter.write(JOB, new Enough(ENOUGH.steps().subList(0, 1))));
        assertThat(doc.at("/enough").asBoolean()).isFalse();
        assertThat(doc.has("firstEnough")).isFalse();
        assertThat(Documents.patterns(doc).keySet())
                .containsAll(EnoughFields.ENOUGH.all().stream()
                        .filter(Field::required)
                        .map(Field::pointer)
                        .toList());
    }
}
