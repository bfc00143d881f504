package org.stockcutting.bench.peers;

import java.io.IOException;
import java.io.Writer;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * Results of one comparison as CSV (RFC 4180).
 *
 * @param seconds what each method was given for a job
 * @param seed of jobs and methods
 * @param results in the order they came: the methods of a job one after the other, ours first
 */
record PeersTable(int seconds, long seed, List<Result> results) {

    private static final List<String> COLUMNS = List.of(
            "job",
            "kind",
            "method",
            "outcome",
            "value",
            "bound",
            "gap",
            "proved",
            "secondsToBest",
            "seconds",
            "limit",
            "seed",
            "remark");

    PeersTable {
        results = List.copyOf(results);
    }

    /** The methods in the order they ran. */
    List<String> methods() {
        return results.stream().map(Result::method).distinct().toList();
    }

    long jobs() {
        return results.stream().map(Result::job).distinct().count();
    }

    void write(Path file) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader(COLUMNS.toArray(String[]::new))
                .get();
        try (Writer writer = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
                CSVPrinter printer = new CSVPrinter(writer, format)) {
            for (Result r : results) {
                printer.printRecord(
                        r.job(),
                        r.kind(),
                        r.method(),
                        r.outcome().word(),
                        r.value(),
                        r.bound(),
                        Double.isNaN(r.gap()) ? "" : String.format(Locale.ROOT, "%.6f", r.gap()),
                        r.proved(),
                        String.format(Locale.ROOT, "%.3f", r.secondsToBest()),
                        String.format(Locale.ROOT, "%.3f", r.seconds()),
                        seconds,
                        seed,
                        r.remark());
            }
        }
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException if a column or an outcome is not one that is written
     */
    static PeersTable read(Path file) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        List<Result> results = new ArrayList<>();
        int seconds = 0;
        long seed = 0;
        try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
            for (CSVRecord line : parser) {
                seconds = Integer.parseInt(line.get("limit"));
                seed = Long.parseLong(line.get("seed"));
                results.add(new Result(
                        line.get("job"),
                        line.get("kind"),
                        line.get("method"),
                        outcome(line.get("outcome")),
                        number(line.get("value")),
                        number(line.get("bound")),
                        Boolean.parseBoolean(line.get("proved")),
                        Double.parseDouble(line.get("secondsToBest")),
                        Double.parseDouble(line.get("seconds")),
                        line.get("remark")));
            }
        }
        return new PeersTable(seconds, seed, results);
    }

    private static Result.Outcome outcome(String word) {
        return Arrays.stream(Result.Outcome.values())
                .filter(outcome -> outcome.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("got outcome " + word));
    }

    private static @Nullable BigInteger number(String text) {
        return text.isEmpty() ? null : new BigInteger(text);
    }
}
