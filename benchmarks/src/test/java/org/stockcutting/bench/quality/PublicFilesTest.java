package org.stockcutting.bench.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.PlanReader;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import picocli.CommandLine;

/**
 * The public sets through the whole door, a few files of each: no value below a known optimum or a valid bound, no bound above a value
 * that somebody reached, and plans that the checker accepts when they are read again. The sets and their sources are named in the folder's
 * own README.
 */
class PublicFilesTest {

    private static final List<String> SETS = List.of(
            "1d_bpplib/csp/Falkenauer_T",
            "1d_bpplib/csp/Falkenauer_U",
            "1d_bpplib/csp/Hard28",
            "1d_bpplib/csp/Scholl_1",
            "1d_bpplib/csp/Scholl_2",
            "1d_bpplib/csp/Schwerin_1",
            "1d_bpplib/csp/Waescher",
            "1d_multistock/Belov1",
            "1d_multistock/Crainic1",
            "1d_multistock/Haouari_Serairi",
            "1d_multistock/Hemmelmayr2",
            "1d_multistock/Monaci",
            "2d_bp_class/split",
            "2d_cutting_stock/cintra2008",
            "2d_multistock/pisinger2005");

    private static final int FILES = 3;

    @TempDir
    Path folder;

    @Test
    void noSetIsContradictedAndEveryPlanPassesTheCheck() throws Exception {
        Path sets = sets();
        Path csv = folder.resolve("public.csv");
        Path plans = folder.resolve("plans");
        List<String> arguments = new ArrayList<>(
                List.of("--work", "20000", "--threads", "2", "--csv", csv.toString(), "--plans", plans.toString()));
        for (String set : SETS) {
            spread(sets.resolve(set)).forEach(file -> arguments.add(file.toString()));
        }
        StringWriter err = new StringWriter();

        int status = new CommandLine(new YieldCommand())
                .setOut(new PrintWriter(new StringWriter(), true))
                .setErr(new PrintWriter(err, true))
                .execute(arguments.toArray(String[]::new));

        assertThat(err.toString()).isEmpty();
        assertThat(status).isZero();
        List<Row> rows = RowTable.read(csv);
        assertThat(rows).hasSize(FILES * SETS.size()).allMatch(row -> row.found() != null);
        assertThat(rows.stream().flatMap(row -> row.contradictions().stream())).isEmpty();
        assertThat(rows.stream().filter(row -> row.known().best() != null))
                .as("files with a best value to compare with")
                .hasSizeGreaterThan(FILES * SETS.size() * 3 / 4);
        check(plans, rows.size());
    }

    /** On this file rounding errors lead the simplex round in circles; it has to notice. */
    @Test
    void aProgrammeThatGoesRoundInCirclesEnds() throws Exception {
        Path file = sets().resolve("2d_multistock/pisinger2005/MB_C6_47");
        StringWriter err = new StringWriter();

        int status = assertTimeoutPreemptively(
                Duration.ofMinutes(2),
                () -> new CommandLine(new YieldCommand())
                        .setOut(new PrintWriter(new StringWriter(), true))
                        .setErr(new PrintWriter(err, true))
                        .execute(file.toString(), "--work", "6000000"));

        assertThat(err.toString()).isEmpty();
        assertThat(status).isZero();
    }

    private static Path sets() {
        String named = System.getProperty("stockcutting.instances", "");
        Path sets = named.isEmpty() ? Path.of("..", "..", "shared", "instances") : Path.of(named);
        boolean there = Files.isDirectory(sets);
        if ("required".equals(System.getenv("STOCKCUTTING_INSTANCES"))) {
            assertThat(there).as("published instances at %s", sets).isTrue();
        }
        assumeTrue(
                there,
                () -> "skipped: no published instances at "
                        + sets.toAbsolutePath().normalize());
        return sets;
    }

    /** The first file of a set, and others at equal distances. */
    private static List<Path> spread(Path set) throws IOException {
        try (Stream<Path> files = Files.list(set)) {
            List<Path> all = files.sorted().toList();
            List<Path> some = new ArrayList<>();
            for (int n = 0; n < FILES; n++) {
                some.add(all.get(all.size() * n / FILES));
            }
            return some;
        }
    }

    private static void check(Path plans, int expected) throws IOException {
        List<Path> jobs;
        try (Stream<Path> files = Files.list(plans)) {
            jobs = files.filter(file -> file.toString().endsWith(".job.json"))
                    .sorted()
                    .toList();
        }
        assertThat(jobs).hasSize(expected);
        for (Path file : jobs) {
            Job job = new JobReader().read(Files.readAllBytes(file)).orThrow();
            Path written = Path.of(file.toString().replace(".job.json", ".plan.json"));
            CuttingPlan plan =
                    new PlanReader(job).read(Files.readAllBytes(written)).orThrow();
            assertThat(PlanChecker.check(job, plan)).as(file.toString()).isEmpty();
        }
    }
}
