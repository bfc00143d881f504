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

/** The documents in one body, as the very text that was sent: their own readers judge them. */
final class BodyDocuments {

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(65)
                    .maxNumberLength(32)
                    .maxStringLength(4_096)
                    .maxNameLength(64)
                    .build())
            .build();

    private final List<String> names;

    private BodyDocuments(List<String> names) {
        this.names = names;
    }

    /**
     * Splits a body.
     *
     * @param names the documents that it must have
     * @return their texts by name
     * @throws ProblemException 400 if it is no JSON, 422 if it is anything but these documents
     */
    static Map<String, String> of(String body, List<String> names) {
        return new BodyDocuments(names).split(body);
    }

    private Map<String, String> split(String body) {
        Map<String, String> found = new HashMap<>();
        List<Fault> faults = new ArrayList<>();
        try (JsonParser parser = FACTORY.createParser(body)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw bad("The body is not an object with " + listed() + ".");
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
        for (String name : names) {
            if (!found.containsKey(name)) {
                faults.add(new Fault(
                        "/" + name,
                        FaultCode.MISSING.word(),
                        "",
                        "an object",
                        "The body has no " + name + "; send {\"" + String.join("\": ..., \"", names) + "\": ...}."));
            }
        }
        if (!faults.isEmpty()) {
            throw new ProblemException(Refusals.faulty(faults));
        }
        return found;
    }

    private String listed() {
        return "a " + String.join(" and a ", names);
    }

    private void field(JsonParser parser, String body, Map<String, String> found, List<Fault> faults)
            throws IOException {
        String name = parser.currentName();
        JsonToken token = parser.nextToken();
        int from = Math.toIntExact(parser.currentTokenLocation().getCharOffset());
        if (token == JsonToken.START_OBJECT) {
            parser.skipChildren();
            String text = body.substring(
                    from, Math.toIntExact(parser.currentLocation().getCharOffset()));
            if (names.contains(name)) {
                if (found.put(name, text) != null) {
                    throw bad("The body has two fields named " + name + ".");
                }
                return;
            }
        } else {
            parser.skipChildren();
        }
        String pointer = "/" + name.replace("~", "~0").replace("/", "~1");
        boolean known = names.contains(name);
        if (known && found.put(name, "") != null) {
            throw bad("The body has two fields named " + name + ".");
        }
        faults.add(new Fault(
                pointer,
                known ? FaultCode.WRONG_TYPE.word() : FaultCode.UNKNOWN_FIELD.word(),
                known ? String.valueOf(token) : name,
                known ? "an object" : String.join(" and ", names),
                known
                        ? "A " + name + " is an object."
                        : "This address takes " + String.join(" and ", names) + ", nothing else."));
    }

    private static ProblemException bad(String detail) {
        return new ProblemException(ProblemKind.BAD_DOCUMENT, detail);
    }
}
