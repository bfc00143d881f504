package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;

/**
 * Turns the rows of a table into the objects of a job document, so that one reader reads both. A column is a field's name, with dots into
 * objects ({@code make.staves.min}); empty cells are absent fields. Remembers which cell each field came from.
 */
final class CsvTable {

    /** Columns that stand for a field of an object, as the JSON name of the object itself. */
    private static final Map<String, String> SHORT = Map.of(
            "price", "price.amount",
            "per", "price.per",
            "currency", "price.currency",
            "group", "group.name",
            "make", "make.as");

    private static final Map<String, Boolean> TRUTH = Map.of("yes", true, "true", true, "no", false, "false", false);

    private static final Pattern WHOLE = Pattern.compile("-?[0-9]{1,18}");

    private final String name;
    private final Faults faults;
    private final List<String> columns = new ArrayList<>();
    private final List<List<String>> rows;
    private final int headerRow;

    private CsvTable(String name, List<List<String>> rows, int headerRow, Faults faults) {
        this.name = name;
        this.rows = rows;
        this.headerRow = headerRow;
        this.faults = faults;
        for (String cell : rows.get(headerRow)) {
            columns.add(cell.strip());
        }
    }

    /**
     * Reads a table, or null with a fault.
     *
     * @param patterns field table patterns that the columns may belong to, such as {@code /parts/*}
     * @param extra columns beyond the fields
     */
    static @Nullable CsvTable read(String name, String text, List<String> patterns, Set<String> extra, Faults faults) {
        List<List<String>> rows = CsvText.read(name, text, faults);
        if (rows == null) {
            return null;
        }
        int header = 0;
        while (header < rows.size() && isEmpty(rows.get(header))) {
            header++;
        }
        if (header == rows.size()) {
            faults.add(
                    name,
                    FaultCode.MISSING,
                    "nothing",
                    "a row of column names",
                    "The " + name + " table is empty; its first row names the columns.");
            return null;
        }
        CsvTable table = new CsvTable(name, rows, header, faults);
        table.reviewColumns(known(patterns, extra));
        return table;
    }

    /** All column names a table may have: fields that hold no object, and the short forms. */
    private static Set<String> known(List<String> patterns, Set<String> extra) {
        Set<String> known = new LinkedHashSet<>(extra);
        for (String pattern : patterns) {
            for (Field field : Fields.JOB.all()) {
                if (field.pointer().startsWith(pattern + "/")
                        && !field.pointer().endsWith("*")) {
                    String path = field.pointer().substring(pattern.length() + 1);
                    boolean cell = field.type() != FieldType.OBJECT && field.type() != FieldType.LIST;
                    if (cell && !path.contains("*")) {
                        known.add(path.replace('/', '.'));
                    }
                }
            }
        }
        SHORT.forEach((brief, path) -> {
            if (known.contains(path)) {
                known.add(brief);
            }
        });
        return known;
    }

    private void reviewColumns(Set<String> known) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < columns.size(); i++) {
            String column = columns.get(i);
            String at = name + " row " + (headerRow + 1) + ", column " + (column.isEmpty() ? i + 1 : column);
            if (column.isEmpty() && !columnIsEmpty(i)) {
                faults.add(
                        at,
                        FaultCode.BLANK,
                        "",
                        "a column name",
                        "Column " + (i + 1) + " has cells but no name; give it one or empty it.");
            } else if (!column.isEmpty() && !known.contains(column)) {
                faults.add(
                        at,
                        FaultCode.UNKNOWN_FIELD,
                        column,
                        "one of " + String.join(", ", known),
                        "There is no column \"" + Faults.shown(column) + "\"." + Nearest.hint(column, known)
                                + " Nothing is ignored silently: correct the name or take the column out.");
                columns.set(i, "");
            } else if (!column.isEmpty() && !seen.add(SHORT.getOrDefault(column, column))) {
                faults.add(
                        at,
                        FaultCode.DUPLICATE_FIELD,
                        column,
                        "each column once",
                        "Column \"" + Faults.shown(column) + "\" is there twice; keep one of them.");
                columns.set(i, "");
            }
        }
    }

    private boolean columnIsEmpty(int column) {
        return rows.stream()
                .allMatch(row -> row.size() <= column || row.get(column).isBlank());
    }

    private static boolean isEmpty(List<String> row) {
        return row.stream().allMatch(String::isBlank);
    }

    boolean has(String column) {
        return columns.contains(column);
    }

    /** One row that is not empty. */
    record Row(int number, Map<String, String> cells) {}

    List<Row> filled() {
        List<Row> filled = new ArrayList<>();
        for (int r = headerRow + 1; r < rows.size(); r++) {
            List<String> row = rows.get(r);
            if (!isEmpty(row)) {
                filled.add(new Row(r + 1, cells(r + 1, row)));
            }
        }
        return filled;
    }

    private Map<String, String> cells(int number, List<String> row) {
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < row.size(); i++) {
            String cell = CsvText.unguarded(row.get(i).strip());
            if (cell.isEmpty()) {
                continue;
            }
            if (i >= columns.size()) {
                faults.add(
                        name + " row " + number + ", column " + (i + 1),
                        FaultCode.NOT_CSV,
                        cell,
                        columns.size() + " cells",
                        "Row " + number + " has more cells than there are columns; put text that holds the separator in"
                                + " quotes.");
                break;
            }
            if (!columns.get(i).isEmpty()) {
                cells.put(columns.get(i), cell);
            }
        }
        return cells;
    }

    /** Where a cell is, for faults. */
    String place(Row row, String column) {
        return name + " row " + row.number + ", column " + column;
    }

    /** Where a row is, for faults about all of it. */
    String place(Row row) {
        return name + " row " + row.number;
    }

    /**
     * Puts the cells of a row into an object.
     *
     * @param pattern field table pattern of the object
     * @param placed hears of each field's path below the object, and of its column
     */
    static ObjectNode object(Row row, String pattern, BiConsumer<String, String> placed) {
        ObjectNode object = JsonOutput.object();
        row.cells.forEach((column, cell) -> {
            String path = path(column);
            placed.accept(path, column);
            ObjectNode parent = object;
            String[] steps = path.split("/");
            for (int i = 0; i < steps.length - 1; i++) {
                parent = parent.get(steps[i]) instanceof ObjectNode inner ? inner : parent.putObject(steps[i]);
            }
            parent.set(steps[steps.length - 1], value(cell, Fields.JOB.find(pattern + "/" + path)));
        });
        return object;
    }

    /** All cells are text; where a whole number or a truth is wanted and there is one, it is meant. */
    private static JsonNode value(String cell, @Nullable Field field) {
        if (field != null && field.type() == FieldType.BOOLEAN) {
            Boolean truth = TRUTH.get(cell.toLowerCase(Locale.ROOT));
            return truth == null ? TextNode.valueOf(cell) : BooleanNode.valueOf(truth);
        }
        boolean number = field != null && field.type() == FieldType.INTEGER;
        return number && WHOLE.matcher(cell).matches()
                ? LongNode.valueOf(Long.parseLong(cell))
                : TextNode.valueOf(cell);
    }

    /** The path of a column's field below its object. */
    static String path(String column) {
        return SHORT.getOrDefault(column, column).replace('.', '/');
    }

    /** The column that a field below an object would stand in. */
    static String column(String path) {
        String dotted = path.replace('/', '.');
        return SHORT.entrySet().stream()
                .filter(e -> e.getValue().equals(dotted))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(dotted);
    }
}
