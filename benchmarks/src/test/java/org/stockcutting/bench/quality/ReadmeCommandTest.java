package org.stockcutting.bench.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.stockcutting.bench.quality.Rows.known;
import static org.stockcutting.bench.quality.Rows.row;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class ReadmeCommandTest {

    @TempDir
    Path folder;

    private final StringWriter err = new StringWriter();

    private int run(Path results, Path readme, String... more) {
        String[] all = new String[4 + more.length];
        all[0] = "--results";
        all[1] = results.toString();
        all[2] = "--readme";
        all[3] = readme.toString();
        System.arraycopy(more, 0, all, 4, more.length);
        return new CommandLine(new ReadmeCommand())
                .setErr(new PrintWriter(err, true))
                .execute(all);
    }

    private void table(String name, int found) throws Exception {
        try (RowTable table = RowTable.open(folder.resolve("results").resolve(name))) {
            table.add(row("a", found, 100, null, known(100, 100, true), "feasible"));
            table.add(row("b", 100, 100, null, known(100, 100, true), "optimal"));
        }
    }

    @Test
    void theNewestTableIsWrittenBetweenTheMarkersAndNothingElseChanges() throws Exception {
        table("2026-01-30.csv", 130);
        table("2026-01-31.csv", 110);
        table("peers.csv", 190);
        table("2026-02-01-sheets.csv", 180);
        Path results = folder.resolve("results");
        Path readme = folder.resolve("README.md");
        Files.writeString(readme, "# Title\n\n" + ReadmeFigures.START + "\nold\n" + ReadmeFigures.END + "\n\nlast\n");

        assertThat(run(results, readme, "--check")).isEqualTo(1);
        assertThat(Files.readString(readme)).contains("old");
        assertThat(run(results, readme)).isZero();

        String text = Files.readString(readme);
        assertThat(text)
                .startsWith("# Title\n\n" + ReadmeFigures.START)
                .endsWith(ReadmeFigures.END + "\n\nlast\n")
                .doesNotContain("old")
                .contains("Measured on 2026-01-31, 2 jobs", "limit a job 1000 steps, seed 1")
                .contains("| set | 2 | 2 | 1 | 5.000 % | 1 of 2 | 5.000 % |");
        assertThat(run(results, readme, "--check")).isZero();
        assertThat(run(results, readme)).isZero();
        assertThat(Files.readString(readme)).isEqualTo(text);
    }

    @Test
    void saysWhatIsMissing() throws Exception {
        Path readme = Files.writeString(folder.resolve("README.md"), "no markers");

        assertThat(run(folder.resolve("results"), readme)).isEqualTo(2);
        table("2026-01-31.csv", 110);
        assertThat(run(folder.resolve("results"), readme)).isEqualTo(2);
        assertThat(err.toString()).contains("no table named DATE.csv", "performance: start");
    }
}
