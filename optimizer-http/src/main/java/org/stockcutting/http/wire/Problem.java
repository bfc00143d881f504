package org.stockcutting.http.wire;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.stockcutting.job.Fault;

/**
 * A refusal as RFC 9457 has it, with every fault under {@code errors}; pointers are those of RFC 6901 into the body that was sent.
 *
 * @param kind what kind of refusal
 * @param status HTTP status; the kind's own, unless the web server chose one that no kind has
 * @param detail what was wrong with this request
 * @param faults faults of the input, empty where the request itself was wrong
 * @param headers headers that belong to the refusal
 */
record Problem(ProblemKind kind, int status, String detail, List<Fault> faults, Map<String, String> headers) {

    static final String TYPE = "application/problem+json";

    Problem {
        faults = List.copyOf(faults);
        headers = Map.copyOf(headers);
    }

    static Problem of(ProblemKind kind, String detail) {
        return new Problem(kind, kind.status(), detail, List.of(), Map.of());
    }

    Problem with(String header, String value) {
        return new Problem(kind, status, detail, faults, Map.of(header, value));
    }

    byte[] bytes() {
        ObjectNode node = Json.object()
                .put("type", "/problems/" + kind.code())
                .put("title", kind.title())
                .put("status", status)
                .put("detail", Json.text(detail))
                .put("code", kind.code());
        ArrayNode errors = node.putArray("errors");
        for (Fault fault : faults) {
            errors.addObject()
                    .put("pointer", Json.text(fault.pointer()))
                    .put("code", fault.code())
                    .put("got", Json.text(fault.got()))
                    .put("expected", Json.text(fault.expected()))
                    .put("text", Json.text(fault.text()));
        }
        return Json.bytes(node);
    }
}
