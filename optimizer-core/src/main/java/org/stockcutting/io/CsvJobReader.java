package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;

/**
 * Reads a job from tables (CSV) for parts and stock, and a job document for the rest. The tables' rows become entries of the document,
 * behind those it has itself; faults name table, row and column, as {@code parts row 4, column length}.
 *
 * <p>Columns are named as the fields of a job document are, with dots into objects ({@code make.staves.min}); {@code price}, {@code per}
 * and {@code currency}, {@code group} and {@code make} stand for the amount, unit and currency of a price, the name of a group and the
 * way a part is made. Grades that a part takes stand in one cell, with semicolons between.
 *
 * <p>A row of the stock table is on hand if its column {@code onHand} says {@code yes}, for sale if it says {@code no}. Without that
 * word a row with {@code price}, {@code per}, {@code available} or {@code pack} is for sale, and so is every other row unless the table has a column
 * {@code quantity} or {@code zones}, which only pieces on hand have.
 */
public final class CsvJobReader {

    private static final String ON_HAND = "onHand";
    private static final String ZONES = "zones";
    private static final String MARKS = "marks";
    private static final String GRADES = "grades";
    private static final String BREAKS = "priceBreaks";
    private static final String PREMIUMS = "widthPremiums";
    private static final List<String> SOLD =
            List.of("price", "price.amount", "per", "price.per", "available", "pack", BREAKS, PREMIUMS);
    private static final List<String> OWNED = List.of("quantity", ZONES);
    private static final Set<String> YES = Set.of("yes", "true", "x", "1");
    private static final Set<String> NO = Set.of("no", "false", "0");

    private final JobReader reader;

    /** A reader that looks trade sizes up in the standard catalog. */
    public CsvJobReader() {
        this(new JobReader());
    }

    /** Reads what the tables come to with this reader. */
    public CsvJobReader(JobReader reader) {
        this.reader = reader;
    }

    /**
     * Reads a job. Never throws on bad input.
     *
     * @param partsCsv table of parts
     * @param stockCsv table of stock, for sale and on hand, or null if the shop has it
     * @param shopJson a job document with the rest, or null for defaults
     */
    public JobReading read(String partsCsv, @Nullable String stockCsv, @Nullable String shopJson) {
        return read(partsCsv, stockCsv, null, shopJson);
    }

    /**
     * Reads a job with a table of its own for measured boards. Never throws on bad input.
     *
     * @param partsCsv table of parts
     * @param stockCsv table of stock, or null
     * @param boardsCsv table of boards, one line each, all on hand, or null
     * @param shopJson a job document with the rest, or null for defaults
     */
    public JobReading read(
            String partsCsv, @Nullable String stockCsv, @Nullable String boardsCsv, @Nullable String shopJson) {
        Faults faults = new Faults();
        ObjectNode root = shopJson == null ? JsonOutput.object() : JsonText.JOB.object(shopJson, faults);
        CsvPlaces places = new CsvPlaces();
        boolean whole = root != null;
        ObjectNode doc = root == null ? JsonOutput.object() : root;
        whole &= parts(partsCsv, doc, places, faults);
        whole &= stockCsv == null || stock(stockCsv, doc, places, faults);
        whole &= boardsCsv == null || boards(boardsCsv, doc, places, faults);
        if (!whole) {
            return new JobReading(null, faults.list(), new TreeMap<>());
        }
        JobReading reading = reader.read(doc, faults);
        List<Fault> placed = reading.faults().stream().map(places::placed).toList();
        return new JobReading(reading.job(), placed, reading.defaults());
    }

    private static boolean parts(String text, ObjectNode doc, CsvPlaces places, Faults faults) {
        CsvTable table = CsvTable.read("parts", text, List.of("/parts/*"), Set.of(MARKS, GRADES), faults);
        if (table == null) {
            return false;
        }
        for (CsvTable.Row row : table.filled()) {
            add("parts", row, table, doc, places, faults);
        }
        list("parts", doc);
        return true;
    }

    private static boolean stock(String text, ObjectNode doc, CsvPlaces places, Faults faults) {
        CsvTable table = CsvTable.read(
                "stock", text, List.of("/stock/*", "/onHand/*"), Set.of(ON_HAND, ZONES, BREAKS, PREMIUMS), faults);
        if (table == null) {
            return false;
        }
        boolean usuallyOwned = OWNED.stream().anyMatch(table::has);
        for (CsvTable.Row row : table.filled()) {
            boolean owned = isOwned(row, table, usuallyOwned, faults);
            Map<String, String> cells = new LinkedHashMap<>(row.cells());
            cells.remove(ON_HAND);
            add(owned ? "onHand" : "stock", new CsvTable.Row(row.number(), cells), table, doc, places, faults);
        }
        return true;
    }

    private static boolean boards(String text, ObjectNode doc, CsvPlaces places, Faults faults) {
        CsvTable table = CsvTable.read("boards", text, List.of("/onHand/*"), Set.of(ZONES), faults);
        if (table == null) {
            return false;
        }
        for (CsvTable.Row row : table.filled()) {
            add("onHand", row, table, doc, places, faults);
        }
        return true;
    }

    private static boolean isOwned(CsvTable.Row row, CsvTable table, boolean usuallyOwned, Faults faults) {
        String said = row.cells().get(ON_HAND);
        boolean sold = SOLD.stream().anyMatch(row.cells()::containsKey);
        if (said == null) {
            return usuallyOwned && !sold;
        }
        if (!YES.contains(said) && !NO.contains(said)) {
            faults.add(
                    table.place(row, ON_HAND),
                    FaultCode.UNKNOWN_WORD,
                    said,
                    "yes or no",
                    "\"onHand\" is \"" + Faults.shown(said)
                            + "\"; write yes for what is owned, no for what is for sale.");
        }
        return YES.contains(said);
    }

    private static void add(
            String list, CsvTable.Row row, CsvTable table, ObjectNode doc, CsvPlaces places, Faults faults) {
        ArrayNode entries = list(list, doc);
        if (entries == null) {
            return;
        }
        String pointer = "/" + list + "/" + entries.size();
        places.row(pointer, table.place(row));
        ObjectNode entry = CsvTable.object(
                row, "/" + list + "/*", (path, column) -> places.cell(pointer + "/" + path, table.place(row, column)));
        String zones = row.cells().get(ZONES);
        if (zones != null) {
            entry.set(ZONES, ZoneText.read(zones, table.place(row, ZONES), faults));
        }
        String breaks = row.cells().get(BREAKS);
        if (breaks != null) {
            entry.set(BREAKS, StepText.breaks(breaks, table.place(row, BREAKS), faults));
        }
        String premiums = row.cells().get(PREMIUMS);
        if (premiums != null) {
            entry.set(PREMIUMS, StepText.premiums(premiums, table.place(row, PREMIUMS), faults));
        }
        String marks = row.cells().get(MARKS);
        if (marks != null) {
            entry.set(MARKS, MarkText.read(marks, table.place(row, MARKS), faults));
        }
        String grades = row.cells().get(GRADES);
        if (grades != null) {
            ArrayNode names = entry.putArray(GRADES);
            for (String name : grades.split(";", -1)) {
                names.add(name.strip());
            }
        }
        entries.add(entry);
    }

    /** The list of this name, made if there is none; null if the document has something else there, which the reader will report. */
    private static @Nullable ArrayNode list(String name, ObjectNode doc) {
        JsonNode there = doc.get(name);
        if (there == null || there.isNull()) {
            return doc.putArray(name);
        }
        return there instanceof ArrayNode list ? list : null;
    }
}
