package org.stockcutting.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;

/**
 * From text to a tree, strictly: RFC 8259 as narrowed by RFC 7493 (UTF-8, no name twice in an object), one document and nothing behind
 * it, within limits that keep hostile documents cheap. Numbers stay exact decimals.
 */
final class JsonText {

    /** Jobs, shops and everything else that is small. */
    static final JsonText JOB = new JsonText(1 << 20, 20, 64);
    /** Plans, which may list thousands of boards, and name defaults by their pointers. */
    static final JsonText PLAN = new JsonText(16 << 20, 64, 512);

    private static final int LONGEST_NUMBER = 32;
    private static final int LONGEST_STRING = 4_096;

    private final int mostCharacters;
    private final int mostDepth;
    private final int longestName;
    private final JsonMapper strict;
    private final JsonMapper tolerant;

    private JsonText(int mostCharacters, int mostDepth, int longestName) {
        this.mostCharacters = mostCharacters;
        this.mostDepth = mostDepth;
        this.longestName = longestName;
        this.strict = mapper(true);
        this.tolerant = mapper(false);
    }

    private JsonMapper mapper(boolean refuseDuplicates) {
        JsonFactory factory = JsonFactory.builder()
                .configure(StreamReadFeature.STRICT_DUPLICATE_DETECTION, refuseDuplicates)
                .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxDocumentLength(mostCharacters)
                        .maxNestingDepth(mostDepth)
                        .maxNumberLength(LONGEST_NUMBER)
                        .maxStringLength(LONGEST_STRING)
                        .maxNameLength(longestName)
                        .build())
                .build();
        return JsonMapper.builder(factory)
                .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
                .build();
    }

    /** Text of UTF-8 bytes, or null with a fault. */
    @Nullable String decode(byte[] utf8, Faults faults) {
        if (utf8.length > mostCharacters) {
            tooLarge(utf8.length, faults);
            return null;
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(utf8))
                    .toString();
        } catch (CharacterCodingException e) {
            faults.add(
                    "",
                    FaultCode.NOT_UTF_8,
                    "other bytes",
                    "UTF-8",
                    "The document is no UTF-8 text; save it as UTF-8 and send it again.");
            return null;
        }
    }

    /** The object that the text is, or null with faults. Names that occur twice are all reported, and reading goes on. */
    @Nullable ObjectNode object(String text, Faults faults) {
        if (text.length() > mostCharacters) {
            tooLarge(text.length(), faults);
            return null;
        }
        JsonNode node = tree(strict, text, faults);
        if (node == null || node.isObject()) {
            return (ObjectNode) node;
        }
        faults.add(
                "",
                FaultCode.WRONG_TYPE,
                Faults.shown(node),
                "an object {...}",
                "The document is " + Faults.shown(node) + "; an object {...} is wanted.");
        return null;
    }

    private void tooLarge(int got, Faults faults) {
        faults.add(
                "",
                FaultCode.TOO_LARGE,
                Integer.toString(got),
                "at most " + mostCharacters,
                "The document is " + got + " long; at most " + mostCharacters + " is read: split the job.");
    }

    private @Nullable JsonNode tree(JsonMapper mapper, String text, Faults faults) {
        try (JsonParser parser = mapper.createParser(text)) {
            try {
                JsonNode node = mapper.readTree(parser);
                if (node == null || node.isMissingNode()) {
                    notJson("", "nothing", "The document is empty; an object {...} is wanted.", faults);
                    return null;
                }
                if (parser.nextToken() != null) {
                    String where = where(parser);
                    notJson("", "more text", "There is text behind the end of the document, at " + where + ".", faults);
                    return null;
                }
                return node;
            } catch (StreamConstraintsException e) {
                beyondLimits(parser, e, faults);
                return null;
            } catch (JsonProcessingException e) {
                if (mapper == strict && String.valueOf(e.getOriginalMessage()).startsWith("Duplicate ")) {
                    return withDuplicates(text, faults);
                }
                brokenAt(parser, faults);
                return null;
            } catch (ArithmeticException | NumberFormatException e) {
                // A number such as 1e99999999999: its power of ten is beyond what any number type holds.
                brokenAt(parser, faults);
                return null;
            }
        } catch (IOException e) {
            throw new UncheckedIOException("reading from memory failed", e);
        }
    }

    private void beyondLimits(JsonParser parser, StreamConstraintsException e, Faults faults) {
        boolean deep = String.valueOf(e.getOriginalMessage()).contains("depth");
        String limit = deep
                ? "at most " + mostDepth + " levels"
                : "numbers up to " + LONGEST_NUMBER + ", texts up to " + LONGEST_STRING + ", names up to " + longestName
                        + " characters";
        faults.add(
                pointer(parser),
                deep ? FaultCode.TOO_DEEP : FaultCode.TOO_LARGE,
                deep ? "deeper" : "longer",
                limit,
                "At " + where(parser) + " the document goes beyond its limits; it may have " + limit + ".");
    }

    private void brokenAt(JsonParser parser, Faults faults) {
        String text = "The document is no JSON at " + where(parser)
                + "; look for a missing comma, bracket or quote just before.";
        notJson(pointer(parser), "other text", text, faults);
    }

    private static void notJson(String pointer, String got, String text, Faults faults) {
        faults.add(pointer, FaultCode.NOT_JSON, got, "one JSON document", text);
    }

    /** Lists every name that an object has twice, then reads the document with the last of each. */
    private @Nullable JsonNode withDuplicates(String text, Faults faults) {
        Deque<Set<String>> names = new ArrayDeque<>();
        try (JsonParser parser = tolerant.createParser(text)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token.isStructStart()) {
                    names.push(new HashSet<>());
                } else if (token.isStructEnd()) {
                    names.pop();
                } else if (token == JsonToken.FIELD_NAME && !names.element().add(parser.currentName())) {
                    String name = Faults.shown(parser.currentName());
                    faults.add(
                            pointer(parser),
                            FaultCode.DUPLICATE_FIELD,
                            name,
                            "each field once",
                            "\"" + name + "\" is said twice in one object, at " + where(parser)
                                    + "; keep one of them.");
                }
            }
        } catch (IOException e) {
            // Broken further on: the second reading below says where.
        }
        return tree(tolerant, text, faults);
    }

    private static String pointer(JsonParser parser) {
        return parser.getParsingContext().pathAsPointer().toString();
    }

    private static String where(JsonParser parser) {
        return "line " + parser.currentLocation().getLineNr() + ", column "
                + parser.currentLocation().getColumnNr();
    }
}
