package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.Optimizer;
import org.stockcutting.http.HandMade;
import org.stockcutting.http.Planner;
import org.stockcutting.io.ComparisonReader;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Comparison;
import picocli.CommandLine;

/** The comparison as a maker asks for it, with the real planner. */
class CompareCommandTest {

    private static final Path POTTING = Path.of("..", "samples", "jobs", "potting-table.json");
    private static final Planner PLANNER = Planner.of(new Optimizer());

    @TempDir
    private Path folder;

    private record Run(int status, String out, String err) {}

    private static Run run(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine commandLine = RootCommand.commandLine(PLANNER);
        commandLine.setOut(new PrintWriter(out));
        commandLine.setErr(new PrintWriter(err));
        int status = commandLine.execute(Stream.of(args).map(String::valueOf).toArray(String[]::new));
        return new Run(status, out.toString(), err.toString());
    }

    @Test
    void peopleReadWhatEachLengthSaves() {
        Run run = run("compare", POTTING);
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("Potting table: what to buy", "2x4-8               $27.86", "all 4               $24.36")
                .contains("stud beside the others saves $1.02")
                .contains("All together: $84.28, 11 pieces to buy.");
        assertThat(run.out().lines()).allMatch(line -> line.length() <= 100);
    }

    @Test
    void theDocumentAndTheFilesSayTheSame() throws Exception {
        Path csv = folder.resolve("c.csv");
        Path html = folder.resolve("c.html");
        Path svg = folder.resolve("c.svg");
        Run run = run("compare", POTTING, "--json", "--csv", csv, "--html", html, "--svg", svg);
        Job job = new JobReader().read(Files.readAllBytes(POTTING)).orThrow();
        Comparison comparison = new ComparisonReader(job).read(run.out()).orThrow();
        assertThat(comparison.components().get(0).allTogether().cost()).hasToString("24.36 USD");
        assertThat(Files.readString(csv))
                .startsWith("component,stock,status,cost,")
                .contains("1,2x4-12,optimal,34.90,USD,34.90,34.90,5,");
        assertThat(Files.readString(csv).lines().count()).isEqualTo(1 + 11 + 11 + 9);
        assertThat(Files.readString(html))
                .contains("<td>$27.86</td>", "<svg", "saves $1.02")
                .doesNotContain("<script", "http-equiv", "src=");
        assertThat(DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(svg.toFile())
                        .getDocumentElement()
                        .getAttribute("viewBox"))
                .isEqualTo("0 0 860 720");
    }

    /** Names from the job are text on the page, whatever they look like, and nothing that leaves parts out is called cheap. */
    @Test
    void namesAreOnlyText() throws Exception {
        String text = HandMade.JOB.replace("\"goal\": \"cost\"", "\"goal\": \"cost\", \"compare\": [[\"@plank\"]]");
        Path job = Files.writeString(folder.resolve("job.json"), text);
        Path html = folder.resolve("c.html");
        Path csv = folder.resolve("c.csv");
        assertThat(run("compare", job, "--html", html, "--csv", csv).status()).isEqualTo(ExitStatus.DONE);
        assertThat(Files.readString(html)).doesNotContain("<script").contains("&lt;script&gt;");
        assertThat(Files.readString(csv)).contains(",'@plank,");
    }

    @Test
    void aLongBeamIsSaidToBeImpossible() {
        Run run = run("compare", Path.of("..", "samples", "jobs", "too-long.json"));
        assertThat(run.status()).isEqualTo(ExitStatus.INCOMPLETE);
        assertThat(run.out()).contains("can't be made from what is for sale and on hand");
    }

    @Test
    void unknownIdsAreRefused() throws Exception {
        String text = HandMade.JOB.replace("\"goal\": \"cost\"", "\"goal\": \"cost\", \"compare\": [[\"plank\"], []]");
        Run run = run("compare", Files.writeString(folder.resolve("job.json"), text));
        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.err()).contains("/compare/0/0", "Nothing for sale is called \"plank\"", "/compare/1");
    }
}
