package org.stockcutting.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.Optimizer;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.part.Part;
import org.stockcutting.stock.Form;

/** Every sample job gives the committed plan, to the byte, on any machine; every plan passes the checker. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SamplesTest {

    private final Map<String, Answer> answers = new TreeMap<>();

    @BeforeAll
    void planThemAll() throws IOException {
        Optimizer optimizer = new Optimizer();
        for (Path sample : Answer.samples()) {
            Answer answer = Answer.to(sample, optimizer);
            answers.put(answer.name(), answer);
        }
    }

    List<String> names() {
        return List.copyOf(answers.keySet());
    }

    private Answer answer(String name) {
        return answers.get(name);
    }

    @ParameterizedTest
    @MethodSource("names")
    void theJobGivesTheCommittedPlan(String name) throws IOException {
        Answer answer = answer(name);
        assertThat(answer.plan().header().reproducible())
                .as("work, not the clock, ended %s", name)
                .isTrue();
        assertThat(PlanChecker.check(answer.job(), answer.plan())).isEmpty();
        Expected.check(name + ".plan.json", answer.document());
    }

    @ParameterizedTest
    @MethodSource("names")
    void thePlanIsReadBackAsItWas(String name) {
        Answer answer = answer(name);
        PlanReading back = new PlanReader(answer.job()).read(answer.document());
        assertThat(back.orThrow()).isEqualTo(answer.plan());
        assertThat(PlanChecker.check(answer.job(), back.orThrow())).isEmpty();
        assertThat(new PlanWriter(answer.job()).write(back.orThrow(), back.defaults()))
                .isEqualTo(answer.document());
    }

    @Test
    void theTableOfAnswersIsTheCommittedOne() throws IOException {
        Expected.check(
                "answers.csv",
                answers.values().stream().map(Answer::row).collect(Collectors.joining("", Answer.HEADER, "")));
    }

    /** The project's measured job stays the size that its read-me says. */
    @Test
    void theTypicalJobHasItsSize() {
        Answer typical = answer("typical");
        assertThat(typical.job().parts()).hasSize(30);
        assertThat(typical.job().parts().stream().mapToInt(Part::quantity).sum())
                .isEqualTo(120);
        assertThat(typical.job().forSale())
                .filteredOn(item -> item.form() == Form.BOARD)
                .hasSize(4);
        assertThat(typical.job().forSale())
                .filteredOn(item -> item.form() == Form.SHEET)
                .isNotEmpty();
    }

    @Test
    void theReadMeSaysWhatComesOut() throws IOException {
        ReadMe.check(answers.values());
    }

    @Test
    void theServiceIsPostedTheJobAndItsPlanIsChecked() throws IOException, InterruptedException {
        Path job = Path.of("jobs", "tool-cabinet.json");
        try (PostedBody server = new PostedBody(200, answer("tool-cabinet").document())) {
            Expected.check("AskTheService.txt", AskTheService.answer(server.address(), job));
            assertThat(server.request()).isEqualTo("POST /v1/plans application/json");
            assertThat(server.body()).isEqualTo(Files.readString(job));
        }
    }

    /** A plan that lies about a length, from a service that says all is well. */
    @Test
    void aWrongPlanFromAServiceIsFoundOut() throws IOException, InterruptedException {
        String wrong = answer("tool-cabinet").document().replaceFirst("\"setUps\": (\\d+)", "\"setUps\": 1$1");
        try (PostedBody server = new PostedBody(200, wrong)) {
            assertThat(AskTheService.answer(server.address(), Path.of("jobs", "tool-cabinet.json")))
                    .contains("1 violations found");
        }
    }

    @Test
    void aRefusalOfTheServiceIsPassedOn() throws IOException, InterruptedException {
        String problem = "{\"title\": \"The job cannot be read\"}";
        try (PostedBody server = new PostedBody(422, problem)) {
            assertThat(AskTheService.answer(server.address(), Path.of("jobs", "too-long.json")))
                    .isEqualTo("refused with 422\n" + problem + "\n");
        }
    }
}
