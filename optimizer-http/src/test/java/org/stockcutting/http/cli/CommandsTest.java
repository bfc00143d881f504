package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.JobRefusedException;
import org.stockcutting.http.HandMade;
import org.stockcutting.http.Planner;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import picocli.CommandLine;

class CommandsTest {

    private static final Planner HAND = (job, effort, listener, cancel) -> HandMade.plan(job);

    @TempDir
    private Path folder;

    private Path job;

    private record Run(int status, String out, String err) {}

    @BeforeEach
    void writeJob() throws Exception {
        job = Files.writeString(folder.resolve("job.json"), HandMade.JOB);
    }

    @Test
    void planPrintsForPeopleAndTellsThatAPartIsMissing() {
        Run run = run(HAND, "plan", job.toString());

        assertThat(run.status()).isEqualTo(ExitStatus.INCOMPLETE);
        assertThat(run.out()).contains("Buying list").contains("can't be made from this wood".substring(6));
        assertThat(run.err()).isEmpty();
    }

    @Test
    void jsonIsTheDocumentAlone() {
        Run run = run(HAND, "plan", job.toString(), "--json");

        assertThat(run.out()).startsWith("{").endsWith("}\n");
        assertThat(run.err()).isEmpty();
    }

    @Test
    void outWritesEveryFileAndClearsOldDrawings() throws Exception {
        Path out = folder.resolve("plan files");
        Files.createDirectories(out);
        Files.writeString(out.resolve("layout-07.svg"), "old");
        Files.writeString(out.resolve("layout-notes.svg"), "mine");

        run(HAND, "plan", job.toString(), "--out", out.toString());

        try (var files = Files.list(out)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "plan.json",
                            "buying-list.csv",
                            "cut-sequence.csv",
                            "pieces.csv",
                            "offcuts.csv",
                            "layout-01.svg",
                            "layout-notes.svg",
                            "plan.pdf",
                            "labels.pdf");
        }
        assertThat(Files.readString(out.resolve("plan.json")))
                .isEqualTo(run(HAND, "plan", job.toString(), "--json").out());
        assertThat(Files.readString(out.resolve("layout-01.svg"))).doesNotContain("<script");
    }

    @Test
    void paperAndPicturesAreAChoice() throws Exception {
        Path out = folder.resolve("a4");

        assertThat(run(HAND, "plan", job.toString(), "--out", out.toString(), "--paper", "A4", "--png")
                        .status())
                .isEqualTo(ExitStatus.INCOMPLETE);

        assertThat(out.resolve("layout-01.png")).isNotEmptyFile();
        try (PDDocument plan = Loader.loadPDF(out.resolve("plan.pdf").toFile())) {
            // ISO 216: A4 is 210 mm wide.
            assertThat(plan.getPage(0).getMediaBox().getWidth() / 72 * 25.4).isCloseTo(210, within(0.01));
        }
        Run unknown = run(HAND, "plan", job.toString(), "--out", out.toString(), "--paper", "a5");
        assertThat(unknown.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(unknown.err()).contains("a5").contains("letter or a4");
    }

    @Test
    void everyFaultIsPrintedAtOnce() throws Exception {
        Files.writeString(job, HandMade.JOB.replace("\"60\"", "\"sixty\"").replace("\"3-1/2\"", "\"-1\""));

        Run run = run(HAND, "plan", job.toString());

        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .contains("/parts/0/length")
                .contains("/parts/1/width")
                .contains("/stock/0/width");
        assertThat(run.err()).contains("got      sixty").contains("way out");
    }

    @Test
    void reviewSaysYesOrListsFaults() throws Exception {
        Run good = run(HAND, "review", job.toString());
        assertThat(good.status()).isEqualTo(ExitStatus.DONE);
        assertThat(good.out()).contains("No faults: 2 lines of parts, 5 pieces");

        Files.writeString(job, HandMade.JOB.replace("\"60\"", "\"1/3\""));
        Run bad = run(HAND, "review", job.toString());
        assertThat(bad.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(bad.err()).contains("/parts/0/length").contains("1/3");
        Run json = run(HAND, "review", job.toString(), "--json");
        assertThat(json.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(json.out()).startsWith("{").contains("\"valid\": false");
    }

    @Test
    void wrongUsageIsRefusedWithAWayOut() {
        for (String[] args : List.of(
                new String[] {},
                new String[] {"plan"},
                new String[] {"plan", job.toString(), "--colour"},
                new String[] {"plan", job.toString(), "--seconds", "0"},
                new String[] {"plan", job.toString(), "--seconds", "soon"},
                new String[] {"plan", job.toString(), "--parts", "p.csv", "--stock", "s.csv"},
                new String[] {"plan", "--parts", "p.csv"},
                new String[] {"check", job.toString()},
                new String[] {"serve", "--port", "70000"},
                new String[] {"fly"})) {
            Run run = run(HAND, args);
            assertThat(run.status()).as(String.join(" ", args)).isEqualTo(ExitStatus.REFUSED);
            assertThat(run.err()).as(String.join(" ", args)).contains("--help").doesNotContain("\tat ");
        }
    }

    @Test
    void filesThatCannotBeReadAreFaultsToo() throws Exception {
        Run missing = run(HAND, "plan", folder.resolve("nothing.json").toString());
        assertThat(missing.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(missing.err()).contains("nothing.json").contains("There is no such file");
        assertThat(run(HAND, "plan", folder.toString()).status()).isEqualTo(ExitStatus.REFUSED);
        Files.write(job, new byte[] {'{', (byte) 0xFF, '}'});
        assertThat(run(HAND, "plan", job.toString()).status()).isEqualTo(ExitStatus.REFUSED);
        Run noFolder = run(HAND, "plan", job.toString(), "--out", job.toString());
        assertThat(noFolder.status()).isEqualTo(ExitStatus.REFUSED);
    }

    @Test
    void anInternalFaultIsOneLineUnlessAskedFor() {
        Planner broken = (job, effort, listener, cancel) -> {
            throw new IllegalStateException("two\nlines");
        };

        Run quiet = run(broken, "plan", job.toString());
        assertThat(quiet.status()).isEqualTo(ExitStatus.INTERNAL);
        assertThat(quiet.err().lines()).hasSize(1);
        assertThat(quiet.err()).contains("IllegalStateException: two lines");
        Run traced = run(broken, "plan", job.toString(), "--trace");
        assertThat(traced.err()).contains("\tat ");
        assertThat(run(broken, "--trace", "plan", job.toString()).err()).contains("\tat ");
    }

    @Test
    void aJobThatThePlannerRefusesIsRefused() {
        Planner strict = (job, effort, listener, cancel) -> {
            throw new JobRefusedException(List.of(new Fault("/parts", "too-many", "5", "4", "Make fewer.")));
        };

        Run run = run(strict, "plan", job.toString());
        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.err()).contains("Make fewer.");
    }

    @Test
    void optionsReplaceTheJobsEffort() throws Exception {
        Files.writeString(job, HandMade.JOB.replace("\"goal\"", "\"effort\": {\"work\": 7, \"seed\": 3}, \"goal\""));
        AtomicReference<Effort> asked = new AtomicReference<>();
        Planner listening = (job, effort, listener, cancel) -> {
            asked.set(effort);
            return HandMade.plan(job);
        };

        run(listening, "plan", job.toString());
        assertThat(asked.get()).isEqualTo(new Effort(7L, null, 3, 1));
        run(listening, "plan", job.toString(), "--seconds", "5", "--threads", "2");
        assertThat(asked.get()).isEqualTo(new Effort(null, 5, 3, 2));
        run(listening, "plan", job.toString(), "--work", "9", "--seed", "4");
        assertThat(asked.get()).isEqualTo(new Effort(9L, null, 4, 1));
    }

    private static Run run(Planner planner, String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine commandLine = RootCommand.commandLine(planner);
        commandLine.setOut(new PrintWriter(out));
        commandLine.setErr(new PrintWriter(err));
        int status = commandLine.execute(args);
        return new Run(status, out.toString(), err.toString());
    }
}
