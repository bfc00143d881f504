package org.stockcutting.bench.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.PlanReader;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.xml.sax.InputSource;
import picocli.CommandLine;

class YieldCommandTest {

    private static final String SAMPLES = "../samples/jobs";

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        return new CommandLine(new YieldCommand())
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(arguments);
    }

    private List<String> withoutSeconds(Path csv) throws IOException {
        int column = RowTable.COLUMNS.indexOf("seconds");
        return Files.readAllLines(csv).stream()
                .map(line -> line.split(",", -1))
                .peek(cells -> cells[column] = "")
                .map(cells -> String.join(",", cells))
                .toList();
    }

    @Test
    void samplesGiveTextTableAndPageAndPlansThatPassTheCheck() throws Exception {
        Path csv = folder.resolve("yield.csv");
        Path html = folder.resolve("yield.html");
        Path plans = folder.resolve("plans");

        int status = run(
                SAMPLES,
                "--work",
                "40000",
                "--csv",
                csv.toString(),
                "--html",
                html.toString(),
                "--plans",
                plans.toString());

        assertThat(err.toString()).isEmpty();
        assertThat(status).isZero();
        assertThat(out.toString())
                .contains(
                        Section.VALUES, Section.WOOD, Section.YIELDS, "by material", "by stock length", "Slowest jobs");
        Row slowest = RowTable.read(csv).stream()
                .max(Comparator.comparingDouble(Row::seconds))
                .orElseThrow();
        assertThat(out.toString()).contains(slowest.file());
        assertThat(RowTable.read(csv)).hasSizeGreaterThan(10).allMatch(row -> row.found() != null);
        assertThat(RowTable.read(csv))
                .extracting(Row::file)
                .contains("../samples/jobs/csv-shelf", "../samples/jobs/typical.json");
        page(Files.readString(html), slowest.file());
        plans(plans);
    }

    /** Needs nothing from anywhere, is well-formed once the doctype is off, and shows its charts. */
    private static void page(String html, String slowest) throws Exception {
        assertThat(html).doesNotContain("href=", "src=", "url(http", "@import", "<script");
        String xml = html.replace("<!DOCTYPE html>", "").replaceAll("<meta ([^>]*)>", "<meta $1/>");
        var document =
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        assertThat(document.getElementsByTagName("svg").getLength()).isEqualTo(3);
        assertThat(document.getElementsByTagName("table").getLength()).isGreaterThan(5);
        assertThat(html).contains(slowest, "offcuts kept");
    }

    private static void plans(Path folder) throws IOException {
        List<Path> jobs;
        try (Stream<Path> files = Files.list(folder)) {
            jobs = files.filter(file -> file.toString().endsWith(".job.json"))
                    .sorted()
                    .toList();
        }
        assertThat(jobs).hasSizeGreaterThan(10);
        for (Path file : jobs) {
            Job job = new JobReader().read(Files.readAllBytes(file)).orThrow();
            Path written = Path.of(file.toString().replace(".job.json", ".plan.json"));
            CuttingPlan plan =
                    new PlanReader(job).read(Files.readAllBytes(written)).orThrow();
            assertThat(PlanChecker.check(job, plan)).as(file.toString()).isEmpty();
        }
    }

    @Test
    void sameSeedAndWorkGiveTheSameTableOneOrTwoAtATime() throws Exception {
        String[] made = {"U-40:2", "T-30:1", "CLASS1-20:1", "boards-6:2", "sheets-4:1", "mixed-6:1"};
        Path one = folder.resolve("one.csv");
        Path two = folder.resolve("two.csv");
        for (Path csv : List.of(one, two)) {
            String threads = csv.equals(one) ? "1" : "2";
            List<String> arguments = new ArrayList<>(
                    List.of("--work", "30000", "--seed", "5", "--threads", threads, "--csv", csv.toString()));
            Stream.of(made).forEach(kind -> arguments.addAll(List.of("--generate", kind)));
            assertThat(run(arguments.toArray(String[]::new))).as(err.toString()).isZero();
        }

        assertThat(withoutSeconds(one)).hasSize(9).isEqualTo(withoutSeconds(two));
        assertThat(RowTable.read(one))
                .filteredOn(row -> row.group().contains("t-30"))
                .allMatch(row -> row.known().best() != null);
    }

    @Test
    void resumeGoesOnWithoutSolvingAgain() throws Exception {
        Path csv = folder.resolve("rows.csv");
        run("--generate", "boards-5:1", "--work", "20000", "--csv", csv.toString());
        String first = Files.readAllLines(csv).get(1).replace("20000 steps", "marked");
        Files.write(csv, List.of(Files.readAllLines(csv).get(0), first));

        int status = run("--generate", "boards-5:3", "--work", "20000", "--csv", csv.toString(), "--resume");

        assertThat(status).isZero();
        assertThat(Files.readAllLines(csv)).hasSize(4);
        assertThat(Files.readAllLines(csv).get(1)).isEqualTo(first);
        assertThat(Files.readAllLines(csv).get(2)).doesNotContain("marked");
    }

    @Test
    void aValueBetterThanAKnownOptimumFailsLoudly() throws Exception {
        Path set = Files.createDirectories(folder.resolve("1d_bpplib/csp/Few"));
        Files.writeString(set.resolve("a.txt"), "1\n10\n5 2\n");
        Files.createDirectories(folder.resolve("best-known"));
        Files.writeString(folder.resolve("best-known/1d_bin_packing.csv"), "file,optimum\n1d_bpplib/csp/Few/a.txt,2\n");

        int status = run(set.toString(), "--work", "1000");

        assertThat(status).isEqualTo(1);
        assertThat(err.toString()).contains("WRONG: 1d_bpplib/csp/Few/a.txt: found 1 is below 2, which nothing can be");
    }

    @Test
    void filesThatCannotBeReadAreNamedAndTheOthersPlanned() throws Exception {
        Files.writeString(folder.resolve("broken.json"), "{\"parts\": 3}");

        assertThat(run(folder.toString(), "--generate", "boards-3:1", "--work", "1000"))
                .isEqualTo(2);
        assertThat(err.toString()).contains("broken.json: left out");
        assertThat(out.toString()).contains("made/boards-3");
    }

    @Test
    void argumentsThatMakeNoSenseAreRefused() {
        assertThat(run()).isEqualTo(2);
        assertThat(run("nowhere")).isEqualTo(2);
        assertThat(run("--generate", "oak:3")).isEqualTo(2);
        assertThat(run("--generate", "U:1", "--threads", "3")).isEqualTo(2);
        assertThat(run("--generate", "U:1", "--resume")).isEqualTo(2);
        assertThat(run("--generate", "U:1", "--format", "oak")).isEqualTo(2);
        assertThat(err.toString())
                .contains("nothing to plan", "nowhere", "KIND:COUNT", "wanted 1 or 2", "--csv FILE", "is no format");
    }

    @Test
    void theTickerSaysHowFarAndHowLong() {
        StringWriter line = new StringWriter();
        Ticker ticker = new Ticker(new PrintWriter(line, true), true, 4);
        ticker.tick(Rows.row("a", 101, 100, "feasible"));

        assertThat(ticker.line(Duration.ofSeconds(100)))
                .isEqualTo("1 of 4 jobs, 1.000 % over bounds, 0:01:40 gone, about 0:05:00 left");
        assertThat(line.toString()).startsWith("\r1 of 4 jobs");
        StringWriter nobody = new StringWriter();
        Ticker quiet = new Ticker(new PrintWriter(nobody, true), false, 4);
        quiet.tick(Rows.row("a", 101, 100, "feasible"));
        quiet.end();
        assertThat(nobody.toString()).isEmpty();
    }
}
