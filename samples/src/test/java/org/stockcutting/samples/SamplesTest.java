package org.stockcutting.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.Optimizer;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobReading;
import org.stockcutting.io.PlanReader;
import org.stockcutting.io.PlanReading;
import org.stockcutting.io.PlanWriter;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/** Every sample job gives the committed plan, to the byte, on any machine; every plan passes the checker. */
class SamplesTest {

    private static final Path JOBS = Path.of("jobs");
    private static final Optimizer OPTIMIZER = new Optimizer();

    static List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(JOBS)) {
            return files.filter(file -> file.toString().endsWith(".json"))
                    .map(file -> file.getFileName().toString().replace(".json", ""))
                    .sorted()
                    .toList();
        }
    }

    private static JobReading read(String name) throws IOException {
        return new JobReader().read(Files.readAllBytes(JOBS.resolve(name + ".json")));
    }

    @ParameterizedTest
    @MethodSource("names")
    void theJobGivesTheCommittedPlan(String name) throws IOException {
        JobReading reading = read(name);
        Job job = reading.orThrow();
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        String document = new PlanWriter(job).write(plan, reading.defaults());
        Expected.check(name + ".plan.json", document);
        PlanReading back = new PlanReader(job).read(document);
        assertThat(back.orThrow()).isEqualTo(plan);
        assertThat(new PlanWriter(job).write(back.orThrow(), back.defaults())).isEqualTo(document);
    }

    @Test
    void theTableOfAnswersIsTheCommittedOne() throws IOException {
        StringBuilder table =
                new StringBuilder("sample,status,stopped,value,bound,searchedBound,boards,setUps,yield\n");
        for (String name : names()) {
            Job job = read(name).orThrow();
            table.append(row(name, job, OPTIMIZER.plan(job)));
        }
        Expected.check("answers.csv", table.toString());
    }

    private static String row(String name, Job job, CuttingPlan plan) {
        BigInteger searched = plan.objective().searchedBound();
        return String.join(
                        ",",
                        name,
                        plan.header().status().word(),
                        plan.header().stopReason().word(),
                        amount(job, plan.objective().value()),
                        amount(job, plan.objective().bound()),
                        searched == null ? "" : amount(job, searched),
                        String.valueOf(
                                plan.layouts().stream().mapToInt(Layout::repeat).sum()),
                        String.valueOf(plan.derived().setUps()),
                        plan.derived().yield().ratio().toPlainString())
                + "\n";
    }

    private static String amount(Job job, BigInteger atomic) {
        return job.goal() == Goal.COST
                ? org.stockcutting.stock.Money.ofMinor(
                                atomic.longValueExact(), job.writing().currency())
                        .toString()
                : atomic.toString();
    }

    @Test
    void tablesReadAsTheJobTheyAre() throws IOException {
        Path folder = JOBS.resolve("csv-shelf");
        JobReading reading = new CsvJobReader()
                .read(
                        Files.readString(folder.resolve("parts.csv")),
                        Files.readString(folder.resolve("stock.csv")),
                        Files.readString(folder.resolve("shop.json")));
        Job job = reading.orThrow();
        CuttingPlan plan = OPTIMIZER.plan(job);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        Expected.check("csv-shelf.plan.json", new PlanWriter(job).write(plan, reading.defaults()));
    }

    @Test
    void theSmallProgramsPrintWhatIsCommitted() {
        Expected.check("HelloPlan.txt", HelloPlan.answer());
        Expected.check("UseTheLeftovers.txt", UseTheLeftovers.answer());
        Expected.check("CutAroundKnots.txt", CutAroundKnots.answer());
        Expected.check("GlueUpTabletop.txt", GlueUpTabletop.answer());
        Expected.check("OneSheetOfPlywood.txt", OneSheetOfPlywood.answer());
        Expected.check("WatchAndCancel.txt", WatchAndCancel.answer());
        Expected.check("CheckAHandMadePlan.txt", CheckAHandMadePlan.answer());
    }

    @Test
    void theServiceIsAskedWithTheJobDocument() throws IOException, InterruptedException {
        try (PostedBody server = new PostedBody("{\"status\": \"optimal\"}")) {
            Path job = JOBS.resolve("tool-cabinet.json");
            assertThat(AskTheService.answer(server.address(), job)).isEqualTo("200\n{\"status\": \"optimal\"}");
            assertThat(server.path()).isEqualTo("/v1/plans");
            assertThat(server.body()).isEqualTo(Files.readString(job));
        }
    }
}
