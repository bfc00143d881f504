package org.stockcutting.draw;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.stockcutting.pattern.PlacedPiece;

/** What did not fit into the drawing: key numbers of narrow pieces, readings too close together, long lists of numbers. */
final class Legend {

    private final Map<String, Integer> keys = new LinkedHashMap<>();
    private final Map<String, TreeSet<Integer>> numbers = new LinkedHashMap<>();
    private final Map<String, String> parts = new LinkedHashMap<>();
    private final Map<String, String> sizes = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();

    /** Key number of a piece; pieces of one part and size share it. */
    int keyOf(PlacedPiece piece, List<Integer> copies, String size) {
        String what = piece.part() + " " + size;
        numbers.computeIfAbsent(what, k -> new TreeSet<>()).addAll(copies);
        parts.put(what, piece.part());
        sizes.put(what, size);
        return keys.computeIfAbsent(what, k -> keys.size() + 1);
    }

    void note(String text) {
        notes.add(text);
    }

    /** The notes alone, not wrapped. */
    List<String> notes() {
        return List.copyOf(notes);
    }

    /** The legend wrapped to a width. */
    List<String> lines(double width, int size) {
        List<String> lines = new ArrayList<>();
        for (Map.Entry<String, Integer> entry : keys.entrySet()) {
            String what = entry.getKey();
            String named = PieceNames.joined(List.copyOf(numbers.getOrDefault(what, new TreeSet<>())));
            String row = "[" + entry.getValue() + "]  " + parts.get(what) + " #" + named + ", " + sizes.get(what);
            wrap(row, width, size, lines);
        }
        for (String note : notes) {
            wrap(note, width, size, lines);
        }
        return lines;
    }

    private static void wrap(String text, double width, int size, List<String> lines) {
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (line.length() > 0 && Pen.width(line + " " + word, size) > width) {
                lines.add(line.toString());
                line = new StringBuilder("    ");
            }
            line.append(line.length() == 0 || line.toString().isBlank() ? "" : " ")
                    .append(word);
        }
        lines.add(line.toString());
    }
}
