package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rows of text under a head, some with a box to tick; a row may also be a heading for those below it. */
final class Table {

    private final List<Column> columns = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();

    /** A column: its head, and whether its text is set to the right. */
    record Column(String head, boolean right) {}

    /**
     * One row.
     *
     * @param tick true if a box to tick stands before it
     * @param heading text across the table, or null for cells
     * @param cells one text a column; empty under a heading
     */
    record Row(boolean tick, @Nullable String heading, List<String> cells) {
        Row {
            cells = List.copyOf(cells);
        }
    }

    Table column(String head) {
        columns.add(new Column(head, false));
        return this;
    }

    Table numbers(String head) {
        columns.add(new Column(head, true));
        return this;
    }

    void row(String... cells) {
        add(new Row(false, null, List.of(cells)));
    }

    void tickRow(String... cells) {
        add(new Row(true, null, List.of(cells)));
    }

    void heading(String text) {
        rows.add(new Row(false, text, List.of()));
    }

    List<Column> columns() {
        return columns;
    }

    List<Row> rows() {
        return rows;
    }

    boolean hasTicks() {
        return rows.stream().anyMatch(Row::tick);
    }

    /** The same table without columns that no row fills. */
    Table withoutEmptyColumns() {
        Table filled = new Table();
        List<Integer> kept = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            int column = c;
            if (rows.stream()
                    .anyMatch(row ->
                            row.heading() == null && !row.cells().get(column).isBlank())) {
                kept.add(c);
                filled.columns.add(columns.get(c));
            }
        }
        for (Row row : rows) {
            List<String> cells =
                    row.heading() == null ? kept.stream().map(row.cells()::get).toList() : List.of();
            filled.rows.add(new Row(row.tick(), row.heading(), cells));
        }
        return filled;
    }

    private void add(Row row) {
        if (row.cells().size() != columns.size()) {
            throw new IllegalArgumentException(
                    "a row of " + columns.size() + " columns has " + row.cells().size() + " cells");
        }
        rows.add(row);
    }
}
