package org.stockcutting.http.wire;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;

/** Job bodies that are ready to be posted. */
final class Examples {

    /** Names of the resources. */
    static final List<String> NAMES = List.of("wall-shelf", "work-table");

    private final byte[] document;

    Examples() {
        ObjectNode root = Json.object();
        ArrayNode examples = root.putArray("examples");
        for (String name : NAMES) {
            examples.addObject().put("id", name).set("job", read(name));
        }
        document = Json.bytes(root);
    }

    byte[] document() {
        return document.clone();
    }

    private static JsonNode read(String name) {
        try (InputStream in = Examples.class.getResourceAsStream("/examples/" + name + ".json")) {
            if (in == null) {
                throw new IllegalStateException("the example " + name + " is missing from the program");
            }
            return JsonMapper.builder().build().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException("the example " + name + " cannot be read", e);
        }
    }
}
