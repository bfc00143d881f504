package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.List;

/** A reader of tables after the grammar of RFC 4180, section 2, written for tests alone. */
final class Rfc4180 {

    private Rfc4180() {}

    static List<List<String>> rows(String text) {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quoted && c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && c == ',') {
                row.add(cell.toString());
                cell.setLength(0);
            } else if (!quoted && c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n') {
                row.add(cell.toString());
                cell.setLength(0);
                rows.add(row);
                row = new ArrayList<>();
                i++;
            } else {
                cell.append(c);
            }
        }
        if (quoted || !row.isEmpty() || cell.length() > 0) {
            throw new AssertionError("the table does not end with a line break outside quotes");
        }
        return rows;
    }
}
