package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;
import picocli.CommandLine;

/** Grades side by side, and boards of random size, as a maker reads them. */
class GradesCommandTest {

    private static final String JOB = """
            {"name": "Poles and cleats", "material": "oak",
             "parts": [{"id": "pole", "quantity": 4, "length": 100, "width": 4, "thickness": 1},
                       {"id": "cleat", "quantity": 120, "length": 12, "width": 4, "thickness": 1, "class": "any"}],
             "stock": [{"id": "good", "grade": "fas", "length": 144, "width": 4, "thickness": 1, "price": {"amount": "20"}},
                       {"id": "knotty", "grade": "3a-common", "length": 144, "width": 4, "thickness": 1, "price": {"amount": "5"}}],
             "wood": {"trials": 60}, "effort": {"work": 40000}}
            """;

    @TempDir
    private Path folder;

    private record Run(int status, String out, String err) {}

    private Run run(String command, String job, String... options) throws IOException {
        Path file = folder.resolve("job.json");
        Files.writeString(file, job);
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine commandLine = RootCommand.commandLine(Planner.of(new Optimizer()));
        commandLine.setOut(new PrintWriter(out));
        commandLine.setErr(new PrintWriter(err));
        int status = commandLine.execute(Stream.concat(Stream.of(command, file.toString()), Stream.of(options))
                .toArray(String[]::new));
        return new Run(status, out.toString(), err.toString());
    }

    @Test
    void peopleReadWhatEachGradeComesTo() throws IOException {
        Run run = run("grades", JOB);
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.out())
                .contains("an estimate", "all fas", "all 3a-common", "not reached")
                .containsPattern("3a-common: cleat; fas: pole .*<- cheapest")
                .contains("The cheapest: 3a-common: cleat; fas: pole.");
        assertThat(run.out().lines()).allMatch(line -> line.length() <= 100);
        String fixed = JOB.replace(
                "\"width\": 4, \"thickness\": 1},", "\"width\": 4, \"thickness\": 1, \"grades\": [\"fas\"]},");
        assertThat(run("grades", fixed).out())
                .as("the poles come from fas in any case")
                .contains("  3a-common: cleat ")
                .contains("  fas: cleat ")
                .doesNotContain("all ");
        assertThat(run("grades", JOB, "--json").out()).contains("\"best\": 2", "\"estimate\": true");
    }

    /** Shelves that nobody graded beside them: each family has its table, the whole job a line of its own. */
    @Test
    void manyFamiliesAreToldApart() throws IOException {
        String more = JOB.replace(
                        "\"parts\": [",
                        "\"parts\": [{\"id\": \"shelf\", \"length\": 40, \"width\": 20,"
                                + " \"thickness\": 0.75, \"material\": \"ply\"},")
                .replace(
                        "\"stock\": [",
                        "\"stock\": [{\"id\": \"ply\", \"form\": \"sheet\", \"length\": 96, \"width\": 48,"
                                + " \"thickness\": 0.75, \"material\": \"ply\", \"price\": {\"amount\": \"60\"}},");
        Run run = run("grades", more);
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.out())
                .contains("For cleat, pole:", "The whole job, each from its cheapest: $190.00 without knots,");
        Run impossible = run("grades", more.replace("\"length\": 40", "\"length\": 400"));
        assertThat(impossible.status()).isEqualTo(ExitStatus.INCOMPLETE);
        assertThat(impossible.out()).contains("some parts can't be made");
    }

    @Test
    void oneGradeIsNoChoice() throws IOException {
        assertThat(run("grades", JOB.replace("3a-common", "fas")).status()).isEqualTo(ExitStatus.INCOMPLETE);
        Run none = run("grades", JOB.replace("\"grade\": \"fas\", ", "").replace("\"grade\": \"3a-common\", ", ""));
        assertThat(none.status()).isEqualTo(ExitStatus.INCOMPLETE);
        assertThat(none.err()).contains("No part could come from two grades");
    }

    @Test
    void roughBoardsAreEstimatedInSentences() throws IOException {
        String rough = """
                {"name": "Rails", "material": "oak", "parts": [{"id": "rail", "quantity": 30, "length": 30, "width": 6, "thickness": 1}],
                 "stock": [{"id": "rough", "form": "random", "nominal": "4/4", "leastLength": 72, "length": 120, "leastWidth": 4, "width": 10,
                            "price": {"amount": "5.50", "per": "board-foot"}}]}
                """;
        Run run = run("plan", rough);
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.out())
                .contains("Rough boards to buy: an estimate, not a plan", "Nothing to buy of fixed sizes.")
                .containsPattern("rough: about \\d+ board feet on average, some \\d+ boards, \\$")
                .containsPattern("To be 90 % sure to finish, take \\d+ board feet")
                .contains("Among them at least 10 boards 6 in wide and 30 in long, or more.")
                .contains("is an estimate from drawn boards, not a plan");
        assertThat(run("sure", rough).err()).contains("'plan' says how much of them to buy to be sure");
    }
}
