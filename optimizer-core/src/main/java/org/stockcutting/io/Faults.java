package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.JobReview;

/** Collects the faults of one document, in the order they are found. */
final class Faults {

    private final List<Fault> faults = new ArrayList<>();
    private final NavigableSet<String> pointers = new TreeSet<>();

    void add(String pointer, FaultCode code, String got, String expected, String text) {
        add(pointer, code.word(), got, expected, text);
    }

    void add(String pointer, String code, String got, String expected, String text) {
        pointers.add(pointer);
        if (faults.size() < JobReview.MOST) {
            faults.add(new Fault(pointer, code, shown(got), expected, text));
        }
    }

    /** Adds what another review found, as it is. */
    void addAll(List<Fault> found) {
        found.forEach(f -> add(f.pointer(), f.code(), f.got(), f.expected(), f.text()));
    }

    List<Fault> list() {
        return List.copyOf(faults);
    }

    boolean isEmpty() {
        return faults.isEmpty();
    }

    /** Where faults are, those beyond the listed ones too. */
    NavigableSet<String> pointers() {
        return pointers;
    }

    /** A value as it is shown in a fault: short, and without what cannot be printed. */
    static String shown(JsonNode node) {
        if (node.isObject()) {
            return "an object";
        }
        if (node.isArray()) {
            return "a list";
        }
        return node.isTextual() ? "\"" + shown(node.textValue()) + "\"" : shown(node.toString());
    }

    static String shown(String got) {
        StringBuilder clean = new StringBuilder();
        got.codePoints()
                .limit(JobReview.SHOWN)
                .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE ? '?' : c)
                .forEach(clean::appendCodePoint);
        return got.codePointCount(0, got.length()) > JobReview.SHOWN ? clean + "..." : clean.toString();
    }
}
