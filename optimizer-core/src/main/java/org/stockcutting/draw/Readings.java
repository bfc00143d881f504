package org.stockcutting.draw;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;

/** Running tape readings along the end and the edge of a board, in rows so that none covers another. */
final class Readings {

    private static final double GAP = 6;
    static final double TICK = 6;

    private final Frame frame;
    private final PrintedLengths print;
    private final int size;
    private final int rows;

    Readings(Frame frame, PrintedLengths print, int size, int rows) {
        this.frame = frame;
        this.print = print;
        this.size = size;
        this.rows = rows;
    }

    /** Paper y below the last row. */
    double bottom(CutLines cuts) {
        int used = alongEnd(cuts).stream()
                .mapToInt(mark -> Math.min(mark.row() + 1, rows))
                .max()
                .orElse(0);
        return frame.bottom() + TICK + used * Pen.lineHeight(size) + 4;
    }

    /** Notes the readings for which there is no room. */
    void note(CutLines cuts, Legend legend) {
        List<Length> end = alongEnd(cuts).stream()
                .filter(m -> m.row() == rows)
                .map(Mark::reading)
                .toList();
        List<Length> edge = alongEdge(cuts).stream()
                .filter(m -> m.row() == rows)
                .map(Mark::reading)
                .toList();
        note("Further readings from the end: ", end, legend);
        note("Further readings from the edge: ", edge, legend);
    }

    void draw(CutLines cuts, Pen pen) {
        for (Mark mark : alongEnd(cuts)) {
            double x = frame.x(mark.reading());
            boolean shown = mark.row() < rows;
            double base = frame.bottom() + (shown ? TICK + mark.row() * Pen.lineHeight(size) : TICK / 2);
            pen.line(x, frame.bottom(), x, base, 0.8f);
            if (shown) {
                pen.text(mark.text(), x - Pen.width(mark.text(), size) / 2, base + size, size);
            }
        }
        for (Mark mark : alongEdge(cuts)) {
            double y = frame.y(mark.reading());
            pen.line(frame.left() - TICK, y, frame.left(), y, 0.8f);
            if (mark.row() < rows) {
                pen.text(mark.text(), frame.left() - TICK - 3 - Pen.width(mark.text(), size), y + size * 0.35, size);
            }
        }
    }

    /** A reading and the row it stands in; row {@link #rows} means that there is no room. */
    private record Mark(Length reading, String text, int row) {}

    private List<Mark> alongEnd(CutLines cuts) {
        double[] taken = new double[rows];
        List<Mark> marks = new ArrayList<>();
        for (Length reading : cuts.readings(Direction.CROSSCUT)) {
            String text = print.position(reading);
            double x = frame.x(reading);
            double from = x - Pen.width(text, size) / 2;
            int row = 0;
            while (row < rows && (taken[row] > from || passesThrough(taken, row, x))) {
                row++;
            }
            if (row < rows) {
                taken[row] = from + Pen.width(text, size) + GAP;
            }
            marks.add(new Mark(reading, text, row));
        }
        return marks;
    }

    /** True if the tick down to a row would cross a text that stands in a row above it. */
    private static boolean passesThrough(double[] taken, int row, double x) {
        for (int above = 0; above < row; above++) {
            if (taken[above] - GAP > x) {
                return true;
            }
        }
        return false;
    }

    private List<Mark> alongEdge(CutLines cuts) {
        double next = Double.POSITIVE_INFINITY;
        List<Mark> marks = new ArrayList<>();
        for (Length reading : cuts.readings(Direction.RIP)) {
            double y = frame.y(reading);
            boolean fits = y <= next;
            if (fits) {
                next = y - Pen.lineHeight(size);
            }
            marks.add(new Mark(reading, print.position(reading), fits ? 0 : rows));
        }
        return marks;
    }

    private void note(String lead, List<Length> readings, Legend legend) {
        if (!readings.isEmpty()) {
            legend.note(lead
                    + String.join(", ", readings.stream().map(print::position).toList()));
        }
    }
}
