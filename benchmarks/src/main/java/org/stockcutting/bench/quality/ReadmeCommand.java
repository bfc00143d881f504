package org.stockcutting.bench.quality;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code readme}: writes the performance section of the README from the newest table of results. */
@Command(
        name = "readme",
        mixinStandardHelpOptions = true,
        description =
                "Writes the section of the README between its two markers from the newest DATE.csv among the results.",
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:done", "1:with --check: the section is not up to date", "2:no results, or no markers"})
public final class ReadmeCommand implements Callable<Integer> {

    @Option(
            names = "--results",
            paramLabel = "DIR",
            defaultValue = "benchmarks/results",
            description = "where tables are (${DEFAULT-VALUE})")
    private Path results = Path.of("");

    @Option(
            names = "--readme",
            paramLabel = "FILE",
            defaultValue = "README.md",
            description = "the file with the markers (${DEFAULT-VALUE})")
    private Path readme = Path.of("");

    @Option(names = "--check", description = "writes nothing, and fails if something would change")
    private boolean check;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        if (spec == null) {
            throw new IllegalStateException("run through picocli");
        }
        PrintWriter err = spec.commandLine().getErr();
        Optional<Path> newest = ReadmeFigures.newest(results);
        if (newest.isEmpty()) {
            err.println(results + ": no table named DATE.csv, as 2026-01-31.csv");
            return 2;
        }
        String before = Files.readString(readme, StandardCharsets.UTF_8);
        String after;
        try {
            after = ReadmeFigures.replaced(
                    before,
                    ReadmeFigures.section(newest.get(), RowTable.read(newest.get())) + ReadmeFigures.peers(results));
        } catch (IllegalArgumentException e) {
            err.println(readme + ": " + e.getMessage());
            return 2;
        }
        if (check && !before.equals(after)) {
            err.println(readme + ": its figures are not those of " + newest.get() + "; run the command readme");
            return 1;
        }
        if (!check) {
            Files.writeString(readme, after, StandardCharsets.UTF_8);
        }
        return 0;
    }
}
