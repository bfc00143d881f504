package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;
import picocli.CommandLine;

/** Are ten-footers worth it, and how many to be sure: what the read-me prints for the raised beds is what the commands say today. */
class ReadmeAnswersTest {

    private static final Path README = Path.of("..", "README.md");
    private static final String JOB =
            Path.of("..", "samples", "jobs", "raised-beds.json").toString();

    private static List<String> run(String command) {
        StringWriter out = new StringWriter();
        CommandLine commandLine = RootCommand.commandLine(Planner.of(new Optimizer()));
        commandLine.setOut(new PrintWriter(out));
        assertThat(commandLine.execute(command, JOB)).isEqualTo(ExitStatus.DONE);
        return out.toString().lines().toList();
    }

    /** The block behind the first mention of the command on this job. */
    private static List<String> printed(String command) throws IOException {
        String text = Files.readString(README);
        String mention = command + " samples/jobs/raised-beds.json";
        String behind = text.substring(text.indexOf(mention));
        String block = behind.substring(behind.indexOf("```\n") + 4);
        return block.substring(0, block.indexOf("```")).lines().toList();
    }

    @Test
    void tenFooters() throws IOException {
        assertThat(printed("compare")).hasSizeGreaterThan(8);
        assertThat(run("compare")).containsSequence(printed("compare"));
    }

    @Test
    void howManyToBeSure() throws IOException {
        assertThat(printed("sure")).hasSizeGreaterThan(8);
        assertThat(run("sure"))
                .containsSequence(printed("sure"))
                .noneMatch(line -> line.contains("clear of every knot"));
    }
}
