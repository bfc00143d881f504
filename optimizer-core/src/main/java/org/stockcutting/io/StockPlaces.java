package org.stockcutting.io;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where each entry for sale stood in its document. A job has boards of random size behind everything else; a document may have them anywhere,
 * and a fault must point to where they are.
 */
final class StockPlaces {

    private static final Pattern ENTRY = Pattern.compile("/stock/(\\d{1,9})");

    private final List<Integer> fixed = new ArrayList<>();
    private final List<Integer> random = new ArrayList<>();
    private int entries;

    /** The next entry of the document. */
    void next(boolean isRandom) {
        (isRandom ? random : fixed).add(entries++);
    }

    /** A text with pointers into the job, as pointers into the document. */
    String inDocument(String text) {
        return moved(text, index -> index < fixed.size() ? fixed.get(index) : random.get(index - fixed.size()));
    }

    /** A pointer into the document, as one into the job. */
    String inJob(String pointer) {
        return moved(pointer, index -> {
            int at = fixed.indexOf(index);
            return at >= 0 ? at : fixed.size() + random.indexOf(index);
        });
    }

    private String moved(String text, IntUnaryOperator place) {
        Matcher matcher = ENTRY.matcher(text);
        return matcher.replaceAll(found -> {
            int index = Integer.parseInt(found.group(1));
            return "/stock/" + (index < entries ? place.applyAsInt(index) : index);
        });
    }
}
