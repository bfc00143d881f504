package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Mark;

/**
 * Marks of a part in one cell: {@code end 4 edge 3/4 bore 3/8 depth 1: shelf peg; edge 1: groove}. Marks are separated by semicolons;
 * behind the colon stands what the mark is for.
 */
final class MarkText {

    private static final Map<String, String> FIELDS =
            Map.of("end", "fromEnd", "edge", "fromEdge", "bore", "bore", "depth", "depth");

    private static final Pattern READING =
            Pattern.compile("\\s*(end|edge|bore|depth)\\s+(.+?)\\s*(?=\\s(?:end|edge|bore|depth)\\s|$)");

    private MarkText() {}

    /** The marks of a cell as a job document has them; a faulty one is reported at this place and left out. */
    static ArrayNode read(String cell, String place, Faults faults) {
        ArrayNode marks = JsonOutput.list();
        for (String text : cell.split(";")) {
            if (!text.isBlank()) {
                ObjectNode mark = mark(text.strip());
                if (mark == null) {
                    faults.add(
                            place,
                            FaultCode.NOT_A_MARK,
                            text.strip(),
                            "readings and a purpose, such as end 4 edge 3/4 bore 3/8: peg",
                            "\"" + Faults.shown(text.strip())
                                    + "\" is no mark; write the reading from the end, the one from the edge or both, then a"
                                    + " colon and what it is for, such as end 4 edge 3/4 bore 3/8: peg.");
                } else {
                    marks.add(mark);
                }
            }
        }
        return marks;
    }

    private static @Nullable ObjectNode mark(String text) {
        int colon = text.indexOf(':');
        if (colon < 0) {
            return null;
        }
        ObjectNode mark = JsonOutput.object();
        String readings = text.substring(0, colon);
        Matcher next = READING.matcher(readings);
        int read = 0;
        while (next.find() && next.start() == read) {
            String name = FIELDS.get(next.group(1));
            if (name == null || mark.has(name)) {
                return null;
            }
            mark.put(name, next.group(2));
            read = next.end();
        }
        boolean whole = !mark.isEmpty() && readings.substring(read).isBlank();
        return whole ? mark.put("purpose", text.substring(colon + 1).strip()) : null;
    }

    static String write(List<Mark> marks, LengthWriter lengths) {
        return marks.stream().map(mark -> write(mark, lengths)).collect(Collectors.joining("; "));
    }

    private static String write(Mark mark, LengthWriter lengths) {
        StringBuilder text = new StringBuilder();
        append(text, "end", mark.fromEnd(), lengths);
        append(text, "edge", mark.fromEdge(), lengths);
        append(text, "bore", mark.bore(), lengths);
        append(text, "depth", mark.depth(), lengths);
        return text.toString().strip() + ": " + mark.purpose();
    }

    private static void append(StringBuilder text, String name, @Nullable Length length, LengthWriter lengths) {
        if (length != null) {
            text.append(' ').append(name).append(' ').append(lengths.exact(length));
        }
    }
}
