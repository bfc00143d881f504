package org.stockcutting.bench.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.stockcutting.bench.quality.Rows.known;
import static org.stockcutting.bench.quality.Rows.row;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CompareResultsTest {

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private static List<Row> table(int jobs, int worse, int better) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < jobs; i++) {
            int found = 1000 + (i < worse ? 2 : 0) - (i >= jobs - better ? 2 : 0);
            rows.add(row("job " + i, found, 900, "feasible"));
        }
        return rows;
    }

    private static List<String> losses(List<Row> before, List<Row> after, boolean strict) {
        return new Comparison(before, after, strict).losses();
    }

    @Test
    void equalAndBetterTablesPass() {
        assertThat(losses(table(20, 0, 0), table(20, 0, 0), true)).isEmpty();
        assertThat(losses(table(20, 0, 0), table(20, 0, 9), true)).isEmpty();
    }

    @Test
    void aFewJobsEitherWayAreNoiseUnlessStrict() {
        assertThat(losses(table(20, 0, 0), table(20, 3, 2), false)).isEmpty();
        assertThat(losses(table(20, 0, 0), table(20, 3, 2), true)).hasSize(3);
    }

    /** Dixon and Mood's sign test: five of five one way has a chance of 1/32, four of four 1/16. */
    @Test
    void worseMoreOftenThanChanceIsALoss() {
        assertThat(losses(table(20, 0, 0), table(20, 4, 0), false)).isEmpty();
        assertThat(losses(table(20, 0, 0), table(20, 5, 0), false))
                .containsExactly("values got worse on 5 jobs and better on 0: more than chance");
    }

    @Test
    void lostProofsMoreOftenThanChanceAreALoss() {
        List<Row> before = new ArrayList<>();
        List<Row> after = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            before.add(row("p" + i, 10, 10, "optimal"));
            after.add(row("p" + i, 10, 9, "feasible"));
        }

        assertThat(losses(before, after, false))
                .containsExactly("proofs got worse on 5 jobs and better on 0: more than chance");
        assertThat(losses(after, before, true)).isEmpty();
    }

    @Test
    void oneBadJobOneIncompleteJobAndOneWrongJobAreLosses() {
        List<Row> before =
                List.of(row("a", 100, 90, "feasible"), row("b", 100, 90, "feasible"), row("c", 100, 90, "feasible"));
        List<Row> after = List.of(
                row("a", 110, 90, "feasible"),
                row("b", 60, 60, "partial"),
                row("c", 80, 80, null, known(85, 90, true), "optimal"));

        assertThat(losses(before, after, false))
                .anyMatch(loss -> loss.startsWith("worse: set : a"))
                .anyMatch(loss -> loss.startsWith("not complete any more: set : b"))
                .anyMatch(loss -> loss.contains("found 80 is below 85"));
    }

    @Test
    void aHigherMeanIsALoss() {
        List<Row> before = List.of(row("a", 1000, 900, "feasible"), row("b", 1000, 900, "feasible"));
        List<Row> after = List.of(row("a", 1003, 900, "feasible"), row("b", 1000, 900, "feasible"));

        assertThat(losses(before, after, false)).containsExactly("the mean value got worse by 0.150 %");
    }

    private Path write(String name, List<Row> rows) throws IOException {
        Path file = folder.resolve(name);
        try (RowTable table = RowTable.open(file)) {
            rows.forEach(table::add);
        }
        return file;
    }

    private int run(Path before, Path after) {
        return new CommandLine(new CompareResultsCommand())
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(before.toString(), after.toString());
    }

    @Test
    void theCommandFailsOnALoss() throws Exception {
        Path old = write("old.csv", table(20, 0, 0));

        assertThat(run(old, write("same.csv", table(20, 1, 1)))).isZero();
        assertThat(run(old, write("worse.csv", table(20, 8, 1)))).isEqualTo(1);
        assertThat(out.toString()).contains("better on 1, worse on 8", "LOSS: values got worse");
        assertThat(run(old, write("other.csv", List.of(row("x", 1, 1, "optimal")))))
                .isEqualTo(2);
        assertThat(err.toString()).contains("no job in common");
        assertThat(run(old, Files.writeString(folder.resolve("no.csv"), "a\n"))).isEqualTo(2);
        assertThat(run(old, folder.resolve("nowhere.csv"))).isEqualTo(2);
    }
}
