package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Sets a table into a flow: columns as wide as their text where there is room, rows never parted over pages, heads said again. */
final class TableSetter {

    private static final double GAP = 10;
    private static final double LEAST = 34;
    private static final double STEP = 1.28;

    private final Table table;
    private final double size;
    private final Flow flow;
    private final Face face;
    private final double[] widths;
    private @Nullable String heading;

    TableSetter(Table table, double size, Flow flow) {
        this.table = table.withoutEmptyColumns();
        this.size = size;
        this.flow = flow;
        face = flow.face();
        widths = widths(flow.width() - indent());
    }

    void set() {
        flow.keep(3 * size * STEP);
        head();
        for (Table.Row row : table.rows()) {
            if (row.heading() != null) {
                heading = row.heading();
                if (flow.keep(3.4 * size * STEP)) {
                    head();
                }
                group(row.heading());
            } else {
                cells(row);
            }
        }
        flow.gap(size * 0.6);
    }

    private double indent() {
        return table.hasTicks() ? PdfSheet.TICK + 8 : 0;
    }

    private void head() {
        List<List<String>> lines = new ArrayList<>();
        for (int c = 0; c < widths.length; c++) {
            lines.add(face.wrapped(table.columns().get(c).head(), size - 2, widths[c]));
        }
        print(lines, size - 2);
        flow.rule(0.8);
    }

    private void group(String text) {
        flow.gap(size * 0.35);
        for (String line : face.wrapped(text, size + 1, flow.width())) {
            flow.line(line, 0, size + 1);
        }
        flow.rule(0.4);
    }

    private void cells(Table.Row row) {
        List<List<String>> lines = new ArrayList<>();
        for (int c = 0; c < widths.length; c++) {
            lines.add(face.wrapped(row.cells().get(c), size, widths[c]));
        }
        int high = lines.stream().mapToInt(List::size).max().orElse(1);
        if (flow.keep(high * size * STEP)) {
            head();
            if (heading != null) {
                group(heading + " (continued)");
            }
        }
        if (row.tick()) {
            flow.sheet().tick(flow.left(), flow.y() + size * STEP - size * 0.2);
        }
        print(lines, size);
    }

    private void print(List<List<String>> cells, double font) {
        int high = cells.stream().mapToInt(List::size).max().orElse(1);
        double x = flow.left() + indent();
        for (int c = 0; c < widths.length; c++) {
            for (int i = 0; i < cells.get(c).size(); i++) {
                double base = flow.y() + (i + 1) * font * STEP - font * 0.2;
                if (table.columns().get(c).right()) {
                    flow.sheet().textRight(cells.get(c).get(i), x + widths[c], base, font);
                } else {
                    flow.sheet().text(cells.get(c).get(i), x, base, font);
                }
            }
            x += widths[c] + GAP;
        }
        flow.gap(high * font * STEP);
    }

    /** Natural widths; where they are too wide together, the widest give way first. */
    private double[] widths(double room) {
        double[] wanted = new double[table.columns().size()];
        double sum = GAP * (wanted.length - 1);
        for (int c = 0; c < wanted.length; c++) {
            wanted[c] = face.width(table.columns().get(c).head(), size - 2) + 1;
            for (Table.Row row : table.rows()) {
                if (row.heading() == null) {
                    wanted[c] = Math.max(wanted[c], face.width(row.cells().get(c), size) + 1);
                }
            }
            sum += wanted[c];
        }
        while (sum > room) {
            int widest = 0;
            for (int c = 1; c < wanted.length; c++) {
                widest = wanted[c] > wanted[widest] ? c : widest;
            }
            double less = Math.min(sum - room, Math.max(2, wanted[widest] * 0.05));
            if (wanted[widest] - less < LEAST) {
                break;
            }
            wanted[widest] -= less;
            sum -= less;
        }
        return wanted;
    }
}
