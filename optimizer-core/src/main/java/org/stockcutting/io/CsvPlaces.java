package org.stockcutting.io;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.stockcutting.job.Fault;

/** Knows which row and column each pointer of a job came from, and says so in faults. */
final class CsvPlaces {

    private static final Pattern ENTRY = Pattern.compile("/(?:parts|stock|onHand)/[0-9]+(?:/[A-Za-z0-9/]+)?");

    private final Map<String, String> cells = new HashMap<>();
    private final Map<String, String> rows = new HashMap<>();

    void cell(String pointer, String place) {
        cells.put(pointer, place);
    }

    void row(String pointer, String place) {
        rows.put(pointer, place);
    }

    /** The fault as someone with the table before them reads it. */
    Fault placed(Fault fault) {
        Matcher entries = ENTRY.matcher(fault.text());
        String text = entries.replaceAll(found -> Matcher.quoteReplacement(place(found.group())));
        return new Fault(place(fault.pointer()), fault.code(), fault.got(), fault.expected(), text);
    }

    /** Row and column of a pointer; the pointer itself where it came from no table. */
    String place(String pointer) {
        String below = "";
        for (String at = pointer; !at.isEmpty(); at = at.substring(0, at.lastIndexOf('/'))) {
            String cell = cells.get(at);
            if (cell != null) {
                return cell;
            }
            String row = rows.get(at);
            if (row != null) {
                return below.isEmpty() ? row : row + ", column " + CsvTable.column(below);
            }
            int slash = at.lastIndexOf('/');
            if (slash < 0) {
                return pointer;
            }
            below = below.isEmpty() ? at.substring(slash + 1) : at.substring(slash + 1) + "/" + below;
        }
        return pointer;
    }
}
