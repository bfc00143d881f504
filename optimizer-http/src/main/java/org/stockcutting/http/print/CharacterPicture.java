package org.stockcutting.http.print;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.stockcutting.draw.CutLines;
import org.stockcutting.length.Length;

/**
 * A board as characters, to scale along its length: the origin end on the left, the origin edge at the bottom. Kerfs are thinner than a
 * character, so neighbours share a line.
 */
final class CharacterPicture {

    static final int COLUMNS = 96;

    private final char[][] cells;
    private final Length length;
    private final Length width;

    /**
     * An empty board.
     *
     * @param length raw length
     * @param width raw width
     * @param rows rows of characters, the outline included
     */
    CharacterPicture(Length length, Length width, int rows) {
        this.length = length;
        this.width = width;
        cells = new char[rows][COLUMNS];
        for (char[] row : cells) {
            Arrays.fill(row, ' ');
        }
    }

    /** Fills the inside of a rectangle. */
    void fill(CutLines.Box box, char with) {
        Span span = span(box);
        for (int row = span.top() + 1; row < span.bottom(); row++) {
            for (int column = span.left() + 1; column < span.right(); column++) {
                cells[row][column] = with;
            }
        }
    }

    /** Draws a rectangle's outline. */
    void outline(CutLines.Box box) {
        Span span = span(box);
        for (int column = span.left(); column <= span.right(); column++) {
            put(span.top(), column, '-');
            put(span.bottom(), column, '-');
        }
        for (int row = span.top(); row <= span.bottom(); row++) {
            put(row, span.left(), '|');
            put(row, span.right(), '|');
        }
    }

    /** Writes the first of the texts that fits into a rectangle, and says whether one did. */
    boolean label(CutLines.Box box, List<String> texts) {
        Span span = span(box);
        int room = span.right() - span.left() - 1;
        int middle = (span.top() + span.bottom()) / 2;
        if (span.bottom() - span.top() < 2) {
            return false;
        }
        for (String text : texts) {
            if (text.length() <= room) {
                int from = span.left() + 1 + (room - text.length()) / 2;
                text.getChars(0, text.length(), cells[middle], from);
                return true;
            }
        }
        return false;
    }

    Stream<String> lines() {
        return Arrays.stream(cells).map(String::new);
    }

    private void put(int row, int column, char line) {
        char there = cells[row][column];
        cells[row][column] =
                (there == '-' && line == '|') || (there == '|' && line == '-') || there == '+' ? '+' : line;
    }

    private record Span(int left, int right, int top, int bottom) {}

    private Span span(CutLines.Box box) {
        int last = cells.length - 1;
        return new Span(
                scaled(box.x(), length, COLUMNS - 1),
                scaled(box.x().plus(box.extentX()), length, COLUMNS - 1),
                last - scaled(box.y().plus(box.extentY()), width, last),
                last - scaled(box.y(), width, last));
    }

    /** Nearest whole step, in integers. */
    private static int scaled(Length at, Length whole, int steps) {
        long full = whole.nanometres();
        return Math.toIntExact((2 * at.nanometres() * steps + full) / (2 * full));
    }
}
