package org.stockcutting.bench.peers;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class PeersCommandTest {

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        return new CommandLine(new PeersCommand())
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(arguments);
    }

    @Test
    void comparesAJobDocumentAndWritesATable() throws Exception {
        Path csv = folder.resolve("peers.csv");

        int status = run("../samples/jobs/picture-frames.json", "--cold", "--seconds", "1", "--csv", csv.toString());

        assertThat(err.toString()).contains("1 of 1: picture-frames.json");
        assertThat(status).isZero();
        assertThat(out.toString()).contains("ours", "first-fit decreasing", "CP-SAT arc-flow", "Wilcoxon");
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSize(7);
        assertThat(lines.get(0)).startsWith("job,kind,method,outcome,value,bound,gap,proved");
        assertThat(lines.get(1)).startsWith("picture-frames.json,jobs,ours,complete,");
    }

    @Test
    void comparesJobsMadeByRule() throws Exception {
        Path csv = folder.resolve("made.csv");

        int status = run("--generate", "sheets-4:2", "--cold", "--seconds", "1", "--csv", csv.toString());

        assertThat(status).isZero();
        assertThat(Files.readAllLines(csv)).hasSize(13).anyMatch(line -> line.contains("made/sheets-4,first-fit"));
        assertThat(run("--generate", "tables:2")).isEqualTo(2);
        assertThat(err.toString()).contains("\"tables:2\": wanted KIND:COUNT");
    }

    @Test
    void saysWhatItCannotRead() throws Exception {
        Path broken = Files.writeString(folder.resolve("broken.json"), "{\"parts\": 3}");

        assertThat(run(broken.toString())).isEqualTo(2);
        assertThat(err.toString()).contains("broken.json");
        assertThat(run(folder.resolve("nowhere").toString())).isEqualTo(2);
        assertThat(err.toString()).contains("there is no such file or folder");
    }
}
