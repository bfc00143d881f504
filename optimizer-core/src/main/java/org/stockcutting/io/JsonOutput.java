package org.stockcutting.io;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.UncheckedIOException;

/** Writes trees as text, the same bytes on every machine: fixed white space, line feeds, fields in the order they were put. */
final class JsonOutput {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private JsonOutput() {}

    static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    static ArrayNode list() {
        return JsonNodeFactory.instance.arrayNode();
    }

    /** Two spaces a level, line feeds, one at the end. */
    static String pretty(ObjectNode tree) {
        Separators separators = Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                .withObjectEmptySeparator("")
                .withArrayEmptySeparator("");
        DefaultPrettyPrinter printer =
                new DefaultPrettyPrinter(separators).withObjectIndenter(new DefaultIndenter("  ", "\n"));
        return text(MAPPER.writer(printer), tree) + "\n";
    }

    /** No white space at all. */
    static String compact(ObjectNode tree) {
        return text(MAPPER.writer(), tree);
    }

    private static String text(ObjectWriter writer, ObjectNode tree) {
        try {
            return writer.writeValueAsString(tree);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a tree of plain values was not written", e);
        }
    }
}
