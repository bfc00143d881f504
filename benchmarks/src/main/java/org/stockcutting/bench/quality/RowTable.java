package org.stockcutting.bench.quality;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.Known;

/**
 * Rows as CSV (RFC 4180), written one by one as they come. Everything but {@code seconds} is repeatable under the same seed and work
 * limit.
 */
final class RowTable implements AutoCloseable {

    static final List<String> COLUMNS = columns();

    private static List<String> columns() {
        List<String> columns = new ArrayList<>(List.of(
                "file",
                "group",
                "goal",
                "pieces",
                "found",
                "bound",
                "searchedBound",
                "known",
                "knownBound",
                "knownReachable",
                "gap",
                "gapToKnown",
                "status",
                "stopReason",
                "unplaced",
                "seconds",
                "work",
                "limit",
                "seed",
                "yield"));
        columns.addAll(Shares.NAMES);
        columns.add("stock");
        columns.add("remark");
        return List.copyOf(columns);
    }

    private final Writer writer;
    private final CSVPrinter printer;

    private RowTable(Writer writer) throws IOException {
        this.writer = writer;
        this.printer = new CSVPrinter(writer, CSVFormat.RFC4180);
        printer.printRecord(COLUMNS);
    }

    /** A new table in a file, whatever was there. */
    static RowTable open(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        return new RowTable(Files.newBufferedWriter(file, StandardCharsets.UTF_8));
    }

    /** Adds a row and sees to it that it is in the file. */
    void add(Row row) {
        try {
            printer.printRecord(fields(row));
            printer.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        writer.close();
    }

    private static List<@Nullable Object> fields(Row row) {
        List<@Nullable Object> fields = new ArrayList<>();
        fields.add(row.file());
        fields.add(row.group());
        fields.add(row.goal());
        fields.add(row.pieces());
        fields.add(row.found());
        fields.add(row.bound());
        fields.add(row.searchedBound());
        fields.add(row.known().best());
        fields.add(row.known().bound());
        fields.add(row.known().reachable());
        fields.add(decimal(row.gap(), 6));
        fields.add(decimal(row.gapToKnown(), 6));
        fields.add(row.status());
        fields.add(row.stopReason());
        fields.add(row.unplaced());
        fields.add(decimal(row.seconds(), 3));
        fields.add(row.work());
        fields.add(row.limit());
        fields.add(row.seed());
        fields.add(decimal(row.yield(), 4));
        row.shares().values().forEach(share -> fields.add(share.toPlainString()));
        fields.add(StockUse.write(row.stock()));
        fields.add(row.remark());
        return fields;
    }

    private static String decimal(double value, int decimals) {
        return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /**
     * Reads a table. A last line that was cut off while it was written is left out.
     *
     * @throws IllegalArgumentException if the file is no such table, saying where
     */
    static List<Row> read(Path file) throws IOException {
        String text = Files.readString(file, StandardCharsets.UTF_8);
        String whole = text.substring(0, text.lastIndexOf('\n') + 1);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        List<Row> rows = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(whole, format)) {
            if (!parser.getHeaderNames().equals(COLUMNS)) {
                throw new IllegalArgumentException(
                        file + ": its columns are " + parser.getHeaderNames() + "; wanted " + COLUMNS);
            }
            for (CSVRecord record : parser) {
                rows.add(row(file, record));
            }
        }
        return rows;
    }

    private static Row row(Path file, CSVRecord record) {
        try {
            return row(record);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    file + ", record " + record.getRecordNumber() + ": " + e.getMessage(), e);
        }
    }

    private static Row row(CSVRecord r) {
        List<BigDecimal> shares = new ArrayList<>();
        Shares.NAMES.forEach(name -> shares.add(new BigDecimal(r.get(name))));
        Known known = new Known(
                whole(r.get("knownBound")), whole(r.get("known")), Boolean.parseBoolean(r.get("knownReachable")));
        return new Row(
                r.get("file"),
                r.get("group"),
                r.get("goal"),
                Integer.parseInt(r.get("pieces")),
                whole(r.get("found")),
                whole(r.get("bound")),
                whole(r.get("searchedBound")),
                known,
                r.get("status"),
                r.get("stopReason"),
                Integer.parseInt(r.get("unplaced")),
                Double.parseDouble(r.get("seconds")),
                Long.parseLong(r.get("work")),
                r.get("limit"),
                Long.parseLong(r.get("seed")),
                Double.parseDouble(r.get("yield")),
                Shares.of(shares),
                StockUse.read(r.get("stock")),
                r.get("remark"));
    }

    private static @Nullable BigInteger whole(String text) {
        return text.isEmpty() ? null : new BigInteger(text);
    }
}
