package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.Optimizer;
import picocli.CommandLine;

/** The commands as a maker types them, with the real planner, on the samples of the project. */
class SampleCommandsTest {

    private static final Path JOBS = Path.of("..", "samples", "jobs");
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Optimizer OPTIMIZER = new Optimizer();

    @TempDir
    private Path folder;

    private record Run(int status, String out, String err) {}

    private static Run run(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine commandLine = RootCommand.commandLine(OPTIMIZER::plan);
        commandLine.setOut(new PrintWriter(out));
        commandLine.setErr(new PrintWriter(err));
        int status = commandLine.execute(Stream.of(args).map(String::valueOf).toArray(String[]::new));
        return new Run(status, out.toString(), err.toString());
    }

    private static Path sample(String name) {
        return JOBS.resolve(name + ".json");
    }

    @Test
    void aPlanForPeopleHasTheListTheBoundAndALayoutForEveryBoard() {
        Run run = run("plan", sample("tool-cabinet"));
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("Tool cabinet on a stand", "Buying list", "2x4-8", "birch ply", "rack-7");
        assertThat(run.out().lines()).allMatch(line -> line.length() <= 120);
    }

    @Test
    void aPartThatCannotBeMadeGivesStatusOneAndTheWayOut() {
        Run run = run("plan", sample("too-long"));
        assertThat(run.status()).isEqualTo(ExitStatus.INCOMPLETE);
        assertThat(run.out()).contains("beam", "150", "14'").contains("Buying list");
    }

    @Test
    void aMissingFileGivesStatusTwo() {
        Run run = run("plan", folder.resolve("nowhere.json"));
        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("nowhere.json").doesNotContain("Exception");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "[]", "null", "{\"parts\": 3}", "\u0000\u0001", "id;length\na;3"})
    void aFileThatIsNoJobGivesStatusTwo(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("job.json"), text);
        for (String command : List.of("plan", "review")) {
            Run run = run(command, file);
            assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
            assertThat(run.err()).contains("way out").doesNotContain("Exception");
        }
    }

    @Test
    void tenMistakesArePrintedAtOnceAndNothingIsPlanned() throws IOException {
        Path file = Files.writeString(folder.resolve("job.json"), """
                {"unit": "yard", "sets": 0, "shop": {"kerf": {"crosscut": "-1/8"}}, "colour": 1,
                 "parts": [{"id": "a", "length": "1/3", "nominal": "2x4"}, {"id": "a", "length": 10, "nominal": "3x99"},
                           {"id": "c", "quantity": 0, "length": 10, "nominal": "2x4"}, {"id": "d", "length": 10, "width": 3}],
                 "stock": [{"nominal": "2x4", "length": "long"}], "goal": "glory"}
                """);
        Run run = run("plan", file, "--out", folder.resolve("out"));
        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.out()).isEmpty();
        assertThat(folder.resolve("out")).doesNotExist();
        assertThat(run.err())
                .contains(
                        "/unit",
                        "/sets",
                        "/shop/kerf/crosscut",
                        "/colour",
                        "/parts/0/length",
                        "/parts/1/id",
                        "/parts/1/nominal",
                        "/parts/2/quantity",
                        "/parts/3/thickness",
                        "/stock/0/length",
                        "/goal");
    }

    @ParameterizedTest
    @CsvSource({"tool-cabinet, 0", "potting-table, 0", "knotty-boards, 0", "too-long, 1", "wardrobe-metric, 0"})
    void theDocumentAloneIsPrintedAndHoldsWhenItIsChecked(String name, int status) throws IOException {
        Run plan = run("plan", sample(name), "--json");
        assertThat(plan.status()).isEqualTo(status);
        JsonNode document = MAPPER.readTree(plan.out());
        assertThat(document.at("/check/valid").booleanValue()).isTrue();
        Path file = Files.writeString(folder.resolve("plan.json"), plan.out());
        Run check = run("check", sample(name), file);
        assertThat(check.status()).isEqualTo(ExitStatus.DONE);
        assertThat(check.out()).contains("The plan holds");
    }

    @Test
    void outWritesEveryFileAndTheDocumentIsTheOneThatIsPrinted() throws IOException {
        Path out = folder.resolve("stand");
        Run run = run("plan", sample("tool-cabinet"), "--out", out);
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        String document = Files.readString(out.resolve("plan.json"));
        assertThat(document)
                .isEqualTo(run("plan", sample("tool-cabinet"), "--json").out());
        int layouts = MAPPER.readTree(document).get("layouts").size();
        try (Stream<Path> files = Files.list(out)) {
            assertThat(files.filter(file -> file.toString().endsWith(".svg"))).hasSize(layouts);
        }
        JsonNode lines = MAPPER.readTree(document).get("buyingList");
        assertThat(Files.readAllLines(out.resolve("buying-list.csv"))).hasSizeGreaterThan(lines.size());
        JsonNode steps = MAPPER.readTree(document).get("cutSequence");
        assertThat(Files.readAllLines(out.resolve("cut-sequence.csv"))).hasSize(1 + steps.size());
    }

    /** Each of these is one false word in a plan that holds. */
    @ParameterizedTest
    @CsvSource({
        "/layouts/0/pieces/0/x, 1/16, /layouts/0",
        "/layouts/0/length, 97, /layouts/0",
        "/buyingList/0/quantity, 1, buying",
        "/yield/kerf, 0, yield",
        "/setUps, 0, set-ups",
    })
    void aTamperedPlanGivesStatusOneAndTheCause(String pointer, String value, String cause) throws IOException {
        ObjectNode plan = (ObjectNode)
                MAPPER.readTree(run("plan", sample("potting-table"), "--json").out());
        int last = pointer.lastIndexOf('/');
        ObjectNode parent = last == 0 ? plan : (ObjectNode) plan.at(pointer.substring(0, last));
        String name = pointer.substring(last + 1);
        if (parent.get(name).isNumber()) {
            parent.put(name, parent.get(name).intValue() + 1);
        } else {
            parent.put(name, value);
        }
        Path file = Files.writeString(folder.resolve("plan.json"), plan.toString());
        Run check = run("check", sample("potting-table"), file);
        assertThat(check.status()).isEqualTo(ExitStatus.INCOMPLETE);
        assertThat(check.out()).contains("violation").contains(cause);
    }

    /** A gap that does not follow from the figures beside it makes no readable plan. */
    @Test
    void aPlanThatContradictsItselfGivesStatusTwo() throws IOException {
        String plan = run("plan", sample("potting-table"), "--json").out().replace("\"0.0000\"", "\"0.0300\"");
        Path file = Files.writeString(folder.resolve("plan.json"), plan);
        Run check = run("check", sample("potting-table"), file);
        assertThat(check.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(check.err()).contains("/cost/gap");
    }

    @Test
    void aPlanOfAnotherJobGivesStatusOne() throws IOException {
        Path file = Files.writeString(
                folder.resolve("plan.json"),
                run("plan", sample("potting-table"), "--json").out());
        Run check = run("check", sample("too-long"), file);
        assertThat(check.status()).isIn(ExitStatus.INCOMPLETE, ExitStatus.REFUSED);
        assertThat(check.out() + check.err()).isNotBlank();
    }

    @Test
    void tablesAndAShopMakeAJob() {
        Path tables = JOBS.resolve("csv-shelf");
        Object[] files = {
            "plan",
            "--parts",
            tables.resolve("parts.csv"),
            "--stock",
            tables.resolve("stock.csv"),
            "--shop",
            tables.resolve("shop.json")
        };
        Run run = run(files);
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.out()).contains("Ladder shelf from two tables", "upright", "2x4-12");
    }

    @Test
    void faultsOfTablesNameRowAndColumn() throws IOException {
        Path parts = Files.writeString(folder.resolve("parts.csv"), "id,length,nominal\na,1/3,2x4\nb,10,9x99\n");
        Path stock = Files.writeString(folder.resolve("stock.csv"), "nominal,length,price\n2x4,8',free\n");
        Run run = run("plan", "--parts", parts, "--stock", stock);
        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.err()).contains("1/3", "9x99", "free").containsIgnoringCase("row 2");
    }

    @Test
    void reviewPlansNothing() {
        Run run = run("review", sample("typical"));
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.out()).contains("No faults").contains("120 pieces");
    }
}
