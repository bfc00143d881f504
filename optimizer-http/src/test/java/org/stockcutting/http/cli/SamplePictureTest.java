package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.Optimizer;
import picocli.CommandLine;

/** The picture in the project's read-me is one that the command draws today. */
class SamplePictureTest {

    private static final Path SAMPLES = Path.of("..", "samples");
    private static final Pattern RECTANGLE = Pattern.compile("<rect [^>]*>");
    private static final Pattern MEASURE = Pattern.compile("\\b(x|y|width|height)=\"([^\"]*)\"");
    /** The white ground: its height depends on how the readings below the board wrap. */
    private static final String PAPER = "width=\"1060\"";

    private static final Pattern LABEL = Pattern.compile("[a-z ]+ #[0-9]+");

    @TempDir
    private Path folder;

    /** Places of letters depend on a machine's fonts; what is drawn where, and which pieces are named, does not. */
    @Test
    void thePictureOfTheSheetIsUpToDate() throws IOException {
        CommandLine command = RootCommand.commandLine(new Optimizer()::plan);
        command.setOut(new PrintWriter(new StringWriter()));
        String job = SAMPLES.resolve(Path.of("jobs", "tool-cabinet.json")).toString();
        assertThat(command.execute("plan", job, "--out", folder.toString())).isEqualTo(ExitStatus.DONE);
        String committed = Files.readString(SAMPLES.resolve(Path.of("pictures", "tool-cabinet-sheet.svg")));
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> pictures =
                    files.filter(file -> file.toString().endsWith(".svg")).toList();
            assertThat(pictures)
                    .as(
                            "none shows samples/pictures/tool-cabinet-sheet.svg; if the plan has changed for the better, run"
                                    + " plan samples/jobs/tool-cabinet.json --out DIR and copy the first sheet there")
                    .anySatisfy(picture -> {
                        String drawn = Files.readString(picture);
                        assertThat(rectangles(drawn)).isEqualTo(rectangles(committed));
                        assertThat(found(LABEL, drawn)).isEqualTo(found(LABEL, committed));
                    });
        }
    }

    private static List<String> rectangles(String svg) {
        return RECTANGLE
                .matcher(svg)
                .results()
                .map(MatchResult::group)
                .map(rectangle -> found(MEASURE, rectangle).toString())
                .filter(rectangle -> !rectangle.contains(PAPER))
                .toList();
    }

    private static List<String> found(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(MatchResult::group).sorted().toList();
    }
}
