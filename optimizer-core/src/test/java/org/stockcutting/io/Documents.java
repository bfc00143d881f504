package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** Documents of the tests, and ways to damage them. */
final class Documents {

    static final JsonMapper MAPPER = JsonMapper.builder().build();

    private Documents() {}

    static String text(String name) {
        try (InputStream in = Documents.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static ObjectNode tree(String name) {
        return parse(text(name));
    }

    static ObjectNode parse(String json) {
        try {
            return (ObjectNode) MAPPER.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every field of a job document by its pattern, with the first pointer it is found at. */
    static Map<String, String> patterns(ObjectNode job) {
        Map<String, String> found = new LinkedHashMap<>();
        collect(job, "", "", found);
        return found;
    }

    private static void collect(JsonNode node, String pointer, String pattern, Map<String, String> found) {
        if (node.isObject()) {
            node.fields().forEachRemaining(e -> {
                String step = pattern.equals("/allowances") || pattern.equals("/woods") ? "*" : e.getKey();
                found.putIfAbsent(pattern + "/" + step, pointer + "/" + e.getKey());
                collect(e.getValue(), pointer + "/" + e.getKey(), pattern + "/" + step, found);
            });
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                collect(node.get(i), pointer + "/" + i, pattern + "/*", found);
            }
        }
    }

    static void set(ObjectNode root, String pointer, JsonNode value) {
        int last = pointer.lastIndexOf('/');
        JsonNode parent = root.at(pointer.substring(0, last));
        String name = pointer.substring(last + 1);
        if (parent.isArray()) {
            ((ArrayNode) parent).set(Integer.parseInt(name), value);
        } else {
            ((ObjectNode) parent).set(name, value);
        }
    }

    static void remove(ObjectNode root, String pointer) {
        int last = pointer.lastIndexOf('/');
        ((ObjectNode) root.at(pointer.substring(0, last))).remove(pointer.substring(last + 1));
    }
}
