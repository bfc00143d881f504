package org.stockcutting.bench.instances;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * Best values known, from the tables in the folder {@code best-known} beside the sets. A table that is not there says nothing; so does a
 * file that no table names.
 */
final class BestKnown {

    static final String FOLDER = "best-known";

    private final Map<String, Known> byFile = new HashMap<>();

    /**
     * Reads the tables.
     *
     * @param folder where they are
     * @param rotate true for the values with pieces turned
     */
    BestKnown(Path folder, boolean rotate) throws IOException {
        read(folder.resolve("1d_bin_packing.csv"), "optimum", "optimum", true);
        read(folder.resolve("1d_several_lengths.csv"), "lower_bound", "feasible_found", true);
        String turned = rotate ? "rotated" : "oriented";
        read(
                folder.resolve("2d_bin_packing_class.csv"),
                "lower_bound_" + turned,
                "best_" + turned + "_guillotine",
                true);
        // A bound for two stages holds for two stages only; a plan of two stages is a plan.
        read(folder.resolve("2d_several_sheets_two_stage_" + turned + ".csv"), null, "best_cost", true);
        if (!rotate) {
            // Packed without the rule of edge-to-edge cuts: the bound holds, the value may be out of reach.
            read(
                    folder.resolve("2d_several_sheets_free_oriented_pisinger.csv"),
                    "bound",
                    "best_cost_free_not_guillotine",
                    false);
        }
    }

    private void read(Path table, @Nullable String bound, String best, boolean reachable) throws IOException {
        if (!Files.exists(table)) {
            return;
        }
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(table, StandardCharsets.UTF_8, format)) {
            for (CSVRecord record : parser) {
                byFile.put(
                        record.get("file"),
                        new Known(bound == null ? null : number(record, bound), number(record, best), reachable));
            }
        }
    }

    private static @Nullable BigInteger number(CSVRecord record, String column) {
        String text = record.get(column);
        return text.isBlank() ? null : new BigDecimal(text.trim()).toBigIntegerExact();
    }

    /** What is known of a file, by its path from the folder that holds the sets. */
    Known of(String file) {
        return byFile.getOrDefault(file, Known.NOTHING);
    }
}
