package org.stockcutting.http.wire;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;

/**
 * The two documents in the body of a check, as the very text that was sent: their own readers judge them.
 *
 * @param job text of the job document
 * @param plan text of the plan document
 */
record CheckBody(String job, String plan) {

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(65)
                    .maxNumberLength(32)
                    .maxStringLength(4_096)
                    .maxNameLength(64)
                    .build())
            .build();

    /**
     * Splits a body.
     *
     * @throws ProblemException 400 if it is no JSON, 422 if it is anything but a job and a plan
     */
    static CheckBody of(String body) {
        Map<String, String> found = new HashMap<>();
        List<Fault> faults = new ArrayList<>();
        try (JsonParser parser = FACTORY.createParser(body)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw bad("The body is not an object with a job and a plan.");
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                field(parser, body, found, faults);
            }
            if (parser.nextToken() != null) {
                throw bad("There is text behind the end of the body.");
            }
        } catch (IOException | ArithmeticException | NumberFormatException e) {
            throw bad("The body is no JSON document within the limits.");
        }
        for (String name : List.of("job", "plan")) {
            if (!found.containsKey(name)) {
                faults.add(new Fault(
                        "/" + name,
                        FaultCode.MISSING.word(),
                        "",
                        "an object",
                        "The body has no " + name + "; send {\"job\": ..., \"plan\": ...}."));
            }
        }
        if (!faults.isEmpty()) {
            throw new ProblemException(Refusals.faulty(faults));
        }
        return new CheckBody(found.getOrDefault("job", ""), found.getOrDefault("plan", ""));
    }

    private static void field(JsonParser parser, String body, Map<String, String> found, List<Fault> faults)
            throws IOException {
        String name = parser.currentName();
        JsonToken token = parser.nextToken();
        int from = Math.toIntExact(parser.currentTokenLocation().getCharOffset());
        if (token == JsonToken.START_OBJECT) {
            parser.skipChildren();
            String text = body.substring(
                    from, Math.toIntExact(parser.currentLocation().getCharOffset()));
            if (name.equals("job") || name.equals("plan")) {
                if (found.put(name, text) != null) {
                    throw bad("The body has two fields named " + name + ".");
                }
                return;
            }
        } else {
            parser.skipChildren();
        }
        String pointer = "/" + name.replace("~", "~0").replace("/", "~1");
        boolean known = name.equals("job") || name.equals("plan");
        if (known && found.put(name, "") != null) {
            throw bad("The body has two fields named " + name + ".");
        }
        faults.add(new Fault(
                pointer,
                known ? FaultCode.WRONG_TYPE.word() : FaultCode.UNKNOWN_FIELD.word(),
                known ? String.valueOf(token) : name,
                known ? "an object" : "job and plan",
                known ? "A " + name + " is an object." : "A check takes job and plan, nothing else."));
    }

    private static ProblemException bad(String detail) {
        return new ProblemException(ProblemKind.BAD_DOCUMENT, detail);
    }
}
