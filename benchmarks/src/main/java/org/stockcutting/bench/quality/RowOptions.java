package org.stockcutting.bench.quality;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What commands share that plan jobs of a seed and tell a row a job. */
public final class RowOptions {

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "of jobs and plans (${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(names = "--csv", paramLabel = "FILE", description = "also writes the table")
    private @Nullable Path csv;

    /** Seed of jobs made by rule and of plans. */
    public long seed() {
        return seed;
    }

    /**
     * Writes the table, if a file is named for it.
     *
     * @param header names of the columns
     * @param rows their cells, without commas
     */
    public void write(List<String> header, List<List<String>> rows) throws IOException {
        if (csv == null) {
            return;
        }
        StringBuilder text = new StringBuilder(String.join(",", header)).append('\n');
        rows.forEach(row -> text.append(String.join(",", row)).append('\n'));
        Files.writeString(csv, text, StandardCharsets.UTF_8);
    }
}
