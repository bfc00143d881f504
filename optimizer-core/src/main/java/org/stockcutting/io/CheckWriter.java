package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.stockcutting.plan.Violation;

/** Writes what an independent check found: the {@code check} of a plan document as a document of its own. */
public final class CheckWriter {

    private CheckWriter() {}

    /** The check document of these violations; an empty list is a plan that holds. */
    public static String write(List<Violation> violations) {
        ObjectNode doc = JsonOutput.object().put("format", JobReader.FORMAT).put("valid", violations.isEmpty());
        ArrayNode list = doc.putArray("violations");
        for (Violation violation : violations) {
            list.addObject()
                    .put("cause", violation.cause())
                    .put("pointer", violation.pointer())
                    .put("text", violation.text());
        }
        return JsonOutput.pretty(doc);
    }
}
