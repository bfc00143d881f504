package org.stockcutting.http.wire;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Writes the small documents that only the service has. */
final class Json {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private Json() {}

    static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    static byte[] bytes(JsonNode node) {
        try {
            return MAPPER.writeValueAsBytes(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree in memory could not be written", e);
        }
    }

    /** Text that UTF-8 can carry: half a surrogate pair, which JSON escapes can smuggle in, becomes a replacement mark. */
    static String text(String any) {
        StringBuilder out = new StringBuilder(any.length());
        any.codePoints()
                .map(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE ? 0xFFFD : c)
                .forEach(out::appendCodePoint);
        return out.toString();
    }
}
