package org.stockcutting.http.cli;

import java.util.List;
import org.stockcutting.job.Fault;

/** Faults for people: one block each, with the place, what stands there, what is wanted, and the way out. */
final class FaultText {

    private FaultText() {}

    static String print(String source, List<Fault> faults) {
        StringBuilder text = new StringBuilder();
        text.append(clean(source)).append(faults.size() == 1 ? ": 1 fault" : ": " + faults.size() + " faults");
        text.append('\n');
        for (Fault fault : faults) {
            text.append('\n');
            row(text, "where", fault.pointer().isEmpty() ? "the whole document" : fault.pointer());
            row(text, "got", fault.got());
            row(text, "wanted", fault.expected());
            row(text, "way out", fault.text());
        }
        return text.toString();
    }

    private static void row(StringBuilder text, String name, String value) {
        if (!value.isEmpty()) {
            text.append("  ")
                    .append(name)
                    .append(" ".repeat(9 - name.length()))
                    .append(clean(value))
                    .append('\n');
        }
    }

    private static String clean(String value) {
        StringBuilder out = new StringBuilder(value.length());
        for (int i = 0; i < value.length(); i++) {
            out.append(Character.isISOControl(value.charAt(i)) ? '?' : value.charAt(i));
        }
        return out.toString();
    }
}
