package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.stockcutting.job.Fault;

/** Writes reviews: whether a request can be planned, and every fault where it cannot. */
public final class ReviewWriter {

    private ReviewWriter() {}

    /** The review document of these faults; an empty list is a valid request. */
    public static String write(List<Fault> faults) {
        ObjectNode doc = JsonOutput.object().put("format", JobReader.FORMAT).put("valid", faults.isEmpty());
        ArrayNode list = doc.putArray("faults");
        for (Fault fault : faults) {
            list.addObject()
                    .put("pointer", fault.pointer())
                    .put("code", fault.code())
                    .put("got", fault.got())
                    .put("expected", fault.expected())
                    .put("text", fault.text());
        }
        return JsonOutput.pretty(doc);
    }
}
