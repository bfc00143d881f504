package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.draw.SafeText;

/**
 * Lines of plain text, at most {@value #WIDTH} columns wide. What a terminal could take for a command is shown as {@code ?}: names come
 * from files that somebody else may have written.
 */
final class TextPage {

    static final int WIDTH = 100;

    private final StringBuilder text = new StringBuilder();

    TextPage line(String line) {
        String clean = clean(line).stripTrailing();
        text.append(clean.length() <= WIDTH ? clean : clean.substring(0, WIDTH - 2) + "..")
                .append('\n');
        return this;
    }

    TextPage gap() {
        text.append('\n');
        return this;
    }

    /** A paragraph broken between words; the lines after the first are indented. */
    TextPage wrapped(String paragraph, String indent) {
        String rest = clean(paragraph);
        String lead = "";
        while (lead.length() + rest.length() > WIDTH) {
            int at = rest.lastIndexOf(' ', WIDTH - lead.length());
            int end = at <= 0 ? WIDTH - lead.length() : at;
            text.append((lead + rest.substring(0, end)).stripTrailing()).append('\n');
            rest = rest.substring(end).stripLeading();
            lead = indent;
        }
        text.append(lead).append(rest).append('\n');
        return this;
    }

    /**
     * A table with two spaces between columns.
     *
     * @param alignRight one entry a column
     * @param rows the first row is the head; cells with no text are left empty
     */
    TextPage table(List<Boolean> alignRight, List<List<String>> rows) {
        List<Integer> widths = new ArrayList<>();
        for (int c = 0; c < alignRight.size(); c++) {
            int widest = 0;
            for (List<String> row : rows) {
                widest = Math.max(widest, row.get(c).length());
            }
            widths.add(widest);
        }
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < alignRight.size(); c++) {
                String pad = " ".repeat(widths.get(c) - row.get(c).length());
                line.append("  ").append(alignRight.get(c) ? pad + row.get(c) : row.get(c) + pad);
            }
            line(line.toString());
        }
        return this;
    }

    @Override
    public String toString() {
        return text.toString();
    }

    private static String clean(String line) {
        return SafeText.clean(line).replace('\uFFFD', '?');
    }
}
