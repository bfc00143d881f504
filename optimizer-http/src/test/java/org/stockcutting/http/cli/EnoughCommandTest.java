package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;

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

/** Whether measured boards are enough yet, as a maker asks for it. Sums by hand: one rail of 40 in fits each board of 60 in. */
class EnoughCommandTest {

    private static final String JOB = """
            {"name": "Ladder", "unit": "in", "precision": "1/16", "material": "ash", "goal": "waste",
             "effort": {"work": 50000},
             "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
             "parts": [{"id": "rail", "quantity": 2, "length": "40", "width": "5", "thickness": "1"}],
             "onHand": [
               {"id": "short", "length": "39", "width": "5", "thickness": "1"},
               {"id": "first", "length": "60", "width": "5", "thickness": "1"},
               {"id": "second", "length": "60", "width": "5", "thickness": "1"}]}
            """;

    @TempDir
    private Path folder;

    private record Run(int status, String out, String err) {}

    private static Run run(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine commandLine = RootCommand.commandLine(Planner.of(new Optimizer()));
        commandLine.setOut(new PrintWriter(out));
        commandLine.setErr(new PrintWriter(err));
        int status = commandLine.execute(Stream.of(args).map(String::valueOf).toArray(String[]::new));
        return new Run(status, out.toString(), err.toString());
    }

    private Path job(String text) throws Exception {
        return Files.writeString(folder.resolve("job.json"), text);
    }

    @Test
    void everyBoardIsToldAndWhatIsToSpare() throws Exception {
        Run run = run("enough", job(JOB));
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.out())
                .contains(
                        "1. with short: not yet. No board for 2 rail. Not used: short.",
                        "2. with first: not yet. No board for 1 rail. Not used: short.",
                        // 60 in less 40 in and the cut, rounded down to a sixteenth
                        "3. with second: enough. Longest piece left over: 19-7/8 in. To spare: short.",
                        "Enough since second.");
        assertThat(run.out().lines()).allMatch(line -> line.length() <= 100);
    }

    @Test
    void notEnoughHasItsReasonAndAWayOut() throws Exception {
        Run run = run("enough", job(JOB.replace("\"quantity\": 2", "\"quantity\": 3")));
        assertThat(run.status()).isEqualTo(ExitStatus.INCOMPLETE);
        assertThat(run.out()).contains("Not enough yet.", "1 of rail", "Way out: ");
    }

    @Test
    void theDocumentSaysTheSame() throws Exception {
        Run run = run("enough", job(JOB), "--json");
        assertThat(run.status()).isEqualTo(ExitStatus.DONE);
        assertThat(run.out())
                .contains("\"enough\": true", "\"firstEnough\": \"second\"", "\"longestLeft\": \"19-7/8\"");
        assertThat(run("enough", job(JOB), "--json").out()).isEqualTo(run.out());
    }

    @Test
    void withoutBoardsThereIsNothingToAsk() throws Exception {
        String text = JOB.substring(0, JOB.indexOf("\"onHand\""))
                + "\"stock\": [{\"length\": \"60\", \"width\": \"5\", \"thickness\": \"1\"}]}";
        Run run = run("enough", job(text));
        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.err()).contains("/onHand", "Nothing is on hand yet");
    }
}
