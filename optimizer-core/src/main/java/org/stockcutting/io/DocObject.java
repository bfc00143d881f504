package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthFormatException;

/**
 * One object of a document, read by the field table. Opening it reports unknown, refused and missing fields; each getter reports its own
 * field's fault and returns null then, or fills in the table's default and notes it.
 */
final class DocObject {

    private final Reading reading;
    private final ObjectNode node;
    private final String pointer;
    private final String pattern;

    DocObject(Reading reading, ObjectNode node, String pointer, String pattern) {
        this.reading = reading;
        this.node = node;
        this.pointer = pointer;
        this.pattern = pattern;
        reviewNames();
    }

    String pointer() {
        return pointer;
    }

    String pointer(String name) {
        return pointer + "/" + name;
    }

    /** Names of the fields that are there, in the document's order. */
    List<String> names() {
        List<String> names = new ArrayList<>();
        for (Iterator<String> i = node.fieldNames(); i.hasNext(); ) {
            names.add(i.next());
        }
        return names;
    }

    private void reviewNames() {
        Map<String, Field> known = reading.table().of(pattern);
        if (known.containsKey("*")) {
            return;
        }
        for (String name : names()) {
            Field field = known.get(name);
            if (field == null) {
                unknown(name, known);
            } else if (field.later() && !node.get(name).isNull()) {
                later(pointer(name), name);
            }
        }
        for (Field field : known.values()) {
            if (field.required() && !has(field.name())) {
                missing(field.name(), field.wanted(), field.meaning());
            }
        }
    }

    private void unknown(String name, Map<String, Field> known) {
        String shown = Faults.shown(name);
        reading.faults()
                .add(
                        pointer + "/" + escaped(name),
                        FaultCode.UNKNOWN_FIELD,
                        name,
                        "one of " + String.join(", ", known.keySet()),
                        "There is no field \"" + shown + "\" here." + Nearest.hint(name, known.keySet())
                                + " Nothing is ignored silently: correct the name or take the field out.");
    }

    private void later(String at, String name) {
        reading.faults()
                .add(
                        at,
                        FaultCode.NOT_YET_SUPPORTED,
                        name,
                        "nothing",
                        "\"" + name + "\" is known but this version cannot honour it; take it out to plan without it.");
    }

    /** Reports that a field is needed here. */
    void missing(String name, String wanted, String meaning) {
        reading.faults()
                .add(
                        pointer(name),
                        FaultCode.MISSING,
                        "nothing",
                        wanted,
                        "\"" + name + "\" (" + meaning + ") is missing; give " + wanted + ".");
    }

    boolean has(String name) {
        JsonNode value = node.get(name);
        return value != null && !value.isNull();
    }

    boolean isText(String name) {
        JsonNode value = node.get(name);
        return value != null && value.isTextual();
    }

    private Field field(String name) {
        Field field = reading.table().find(pattern + "/" + name);
        if (field == null) {
            throw new IllegalStateException("the field table has no " + pattern + "/" + name);
        }
        return field;
    }

    /** The value, or null if it is absent, or null where that means absent. */
    private @Nullable JsonNode value(String name, Field field) {
        JsonNode value = node.get(name);
        if (value != null && value.isNull() && field.standard() != null) {
            return wrongType(name, value, field);
        }
        return value == null || value.isNull() ? null : value;
    }

    private <T> @Nullable T wrongType(String name, JsonNode value, Field field) {
        fault(name, FaultCode.WRONG_TYPE, value, field.wanted());
        return null;
    }

    /** Reports a value that does not do here. */
    void fault(String name, FaultCode code, JsonNode value, String wanted) {
        reading.faults()
                .add(
                        pointer(name),
                        code,
                        value.isTextual() ? value.textValue() : Faults.shown(value),
                        wanted,
                        "\"" + name + "\" is " + Faults.shown(value) + "; give " + wanted + ".");
    }

    /** The table's default, if it has one and nothing was given at all. */
    private @Nullable String standard(String name, Field field) {
        return node.has(name) ? null : field.standard();
    }

    private void filledIn(String name, String text) {
        reading.filledIn(pointer(name), text);
    }

    @Nullable String text(String name) {
        Field field = field(name);
        JsonNode value = value(name, field);
        if (value == null) {
            String standard = standard(name, field);
            if (standard != null) {
                filledIn(name, standard);
            }
            return standard;
        }
        return value.isTextual() ? value.textValue() : wrongType(name, value, field);
    }

    <E extends Enum<E>> @Nullable E word(String name, E[] values, Function<E, String> word) {
        String text = word(name);
        for (E value : values) {
            if (word.apply(value).equals(text)) {
                return value;
            }
        }
        return null;
    }

    /** One of the table's words. */
    @Nullable String word(String name) {
        Field field = field(name);
        String text = text(name);
        if (text == null || field.words().contains(text)) {
            return text;
        }
        if (field.laterWords().contains(text)) {
            later(pointer(name), text);
            return null;
        }
        reading.faults()
                .add(
                        pointer(name),
                        FaultCode.UNKNOWN_WORD,
                        text,
                        field.wanted(),
                        "\"" + name + "\" is \"" + Faults.shown(text) + "\"; give " + field.wanted() + "."
                                + Nearest.hint(text, field.words()));
        return null;
    }

    @Nullable Length length(String name) {
        Field field = field(name);
        JsonNode value = value(name, field);
        if (value == null) {
            String standard = standard(name, field);
            if (standard == null) {
                return null;
            }
            Length length = reading.lengths().read(standard);
            filledIn(name, reading.writer().exact(length));
            return length;
        }
        return value.isTextual() || value.isNumber() ? lengthOf(name, value) : wrongType(name, value, field);
    }

    /** A text or number of this field, read as a length. */
    @Nullable Length lengthOf(String name, JsonNode value) {
        try {
            return value.isTextual()
                    ? reading.lengths().read(value.textValue())
                    : reading.lengths().read(value.decimalValue());
        } catch (LengthFormatException e) {
            reading.faults().add(pointer(name), e.code(), e.got(), e.expected(), String.valueOf(e.getMessage()));
            return null;
        }
    }

    @Nullable Integer integer(String name) {
        Long value = integer(name, Integer.MIN_VALUE, Integer.MAX_VALUE);
        return value == null ? null : value.intValue();
    }

    @Nullable Long longInteger(String name) {
        return integer(name, Long.MIN_VALUE, Long.MAX_VALUE);
    }

    private @Nullable Long integer(String name, long least, long most) {
        Field field = field(name);
        JsonNode value = value(name, field);
        if (value == null) {
            String standard = standard(name, field);
            if (standard == null) {
                return null;
            }
            filledIn(name, standard);
            return Long.valueOf(standard);
        }
        if (!value.isIntegralNumber()) {
            return wrongType(name, value, field);
        }
        BigInteger whole = value.bigIntegerValue();
        if (whole.compareTo(BigInteger.valueOf(least)) < 0 || whole.compareTo(BigInteger.valueOf(most)) > 0) {
            fault(name, FaultCode.OUT_OF_RANGE, value, "a whole number from " + least + " to " + most);
            return null;
        }
        return whole.longValueExact();
    }

    @Nullable Boolean bool(String name) {
        Field field = field(name);
        JsonNode value = value(name, field);
        if (value == null) {
            return null;
        }
        return value.isBoolean() ? value.booleanValue() : wrongType(name, value, field);
    }

    @Nullable BigDecimal amount(String name) {
        Field field = field(name);
        JsonNode value = value(name, field);
        if (value == null) {
            return null;
        }
        return value.isTextual() || value.isNumber()
                ? Amounts.read(value, pointer(name), reading)
                : wrongType(name, value, field);
    }

    /** The value of a field that must be text, or null: for kinds that their own reader makes sense of. */
    private @Nullable String plainText(String name, Field field) {
        JsonNode value = value(name, field);
        if (value == null) {
            return null;
        }
        return value.isTextual() ? value.textValue() : wrongType(name, value, field);
    }

    /** As {@link #parsed}, but a number may stand there without quotes too. */
    <T> @Nullable T parsedNumber(String name, FaultCode code, Function<String, @Nullable T> reader) {
        Field field = field(name);
        JsonNode value = value(name, field);
        return parsed(
                name,
                code,
                reader,
                field,
                value != null && value.isNumber() ? value.decimalValue().toPlainString() : plainText(name, field));
    }

    /** A text that another reader makes sense of; its null becomes a fault with this code. */
    <T> @Nullable T parsed(String name, FaultCode code, Function<String, @Nullable T> reader) {
        Field field = field(name);
        return parsed(name, code, reader, field, plainText(name, field));
    }

    private <T> @Nullable T parsed(
            String name, FaultCode code, Function<String, @Nullable T> reader, Field field, @Nullable String text) {
        T value = text == null ? null : reader.apply(text);
        if (text != null && value == null) {
            fault(name, code, node.get(name), field.wanted());
        }
        return value;
    }

    /** The whole numbers of a list; faulty ones are reported and left out. */
    List<Integer> integers(String name) {
        List<Integer> found = new ArrayList<>();
        List<JsonNode> values = list(name);
        for (int i = 0; i < values.size(); i++) {
            JsonNode value = values.get(i);
            if (value.isIntegralNumber() && value.canConvertToInt()) {
                found.add(value.intValue());
            } else {
                fault(name + "/" + i, FaultCode.WRONG_TYPE, value, FieldType.INTEGER.wanted());
            }
        }
        return found;
    }

    /** The texts of a list; faulty ones are reported and left out. */
    List<String> texts(String name) {
        List<String> found = new ArrayList<>();
        List<JsonNode> values = list(name);
        for (int i = 0; i < values.size(); i++) {
            if (values.get(i).isTextual()) {
                found.add(values.get(i).textValue());
            } else {
                fault(name + "/" + i, FaultCode.WRONG_TYPE, values.get(i), FieldType.TEXT.wanted());
            }
        }
        return found;
    }

    /** The lists of texts of a list; an empty one, with a fault, in the place of each value that is none. */
    List<List<String>> textLists(String name) {
        List<List<String>> found = new ArrayList<>();
        List<JsonNode> values = list(name);
        for (int i = 0; i < values.size(); i++) {
            List<String> texts = new ArrayList<>();
            if (!values.get(i).isArray()) {
                fault(name + "/" + i, FaultCode.WRONG_TYPE, values.get(i), FieldType.LIST.wanted());
            }
            for (int j = 0; values.get(i).isArray() && j < values.get(i).size(); j++) {
                JsonNode value = values.get(i).get(j);
                if (!value.isTextual()) {
                    fault(name + "/" + i + "/" + j, FaultCode.WRONG_TYPE, value, FieldType.TEXT.wanted());
                }
                texts.add(value.isTextual() ? value.textValue() : "");
            }
            found.add(texts);
        }
        return found;
    }

    /** Reads a length that is an item of a list, at this pointer below the object. */
    @Nullable Length lengthAt(String below, JsonNode value) {
        if (value.isTextual() || value.isNumber()) {
            return lengthOf(below, value);
        }
        fault(below, FaultCode.WRONG_TYPE, value, FieldType.LENGTH.wanted());
        return null;
    }

    /** The value of a field that may be of several kinds, or null. */
    @Nullable JsonNode any(String name) {
        return value(name, field(name));
    }

    /** The object in this field, or null. */
    @Nullable DocObject object(String name) {
        Field field = field(name);
        JsonNode value = value(name, field);
        if (value == null) {
            return null;
        }
        return value.isObject() ? child(name, (ObjectNode) value) : wrongType(name, value, field);
    }

    /** The object in this field; an empty one, whose defaults are filled in, if it is absent. */
    DocObject objectOrEmpty(String name) {
        DocObject found = object(name);
        return found == null ? child(name, JsonNodeFactory.instance.objectNode()) : found;
    }

    private DocObject child(String name, ObjectNode value) {
        return new DocObject(reading, value, pointer(name), pattern + "/" + name);
    }

    /** The object under a free name, or null with a fault. */
    @Nullable DocObject named(String name) {
        JsonNode value = node.get(name);
        String at = pointer + "/" + escaped(name);
        if (value != null && value.isObject()) {
            return new DocObject(reading, (ObjectNode) value, at, pattern + "/*");
        }
        String got = value == null ? "nothing" : Faults.shown(value);
        reading.faults()
                .add(at, FaultCode.WRONG_TYPE, got, "an object {...}", "This is " + got + "; give an object {...}.");
        return null;
    }

    /** The text under a free name, or null with a fault. */
    @Nullable String freeText(String name) {
        JsonNode value = node.get(name);
        if (value != null && value.isTextual()) {
            return value.textValue();
        }
        fault(escaped(name), FaultCode.WRONG_TYPE, value == null ? node : value, FieldType.TEXT.wanted());
        return null;
    }

    /** The value in this field if it is neither object nor list: for fields that take one value for several. */
    @Nullable JsonNode single(String name) {
        JsonNode value = value(name, field(name));
        return value == null || value.isContainerNode() ? null : value;
    }

    /** The values of a list, empty if it is absent or faulty. */
    List<JsonNode> list(String name) {
        Field field = field(name);
        JsonNode value = value(name, field);
        if (value == null) {
            return List.of();
        }
        if (!value.isArray()) {
            wrongType(name, value, field);
            return List.of();
        }
        List<JsonNode> values = new ArrayList<>();
        value.forEach(values::add);
        return values;
    }

    /** The objects of a list; null, with a fault, in the place of each value that is none, so that indexes stay. */
    List<@Nullable DocObject> objects(String name) {
        List<JsonNode> values = list(name);
        List<@Nullable DocObject> objects = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            String at = pointer(name) + "/" + i;
            JsonNode value = values.get(i);
            if (value.isObject()) {
                objects.add(new DocObject(reading, (ObjectNode) value, at, pattern + "/" + name + "/*"));
            } else {
                String got = Faults.shown(value);
                reading.faults()
                        .add(
                                at,
                                FaultCode.WRONG_TYPE,
                                got,
                                "an object {...}",
                                "This is " + got + "; give an object {...}.");
                objects.add(null);
            }
        }
        return objects;
    }

    /** A name as one step of an RFC 6901 pointer. */
    static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }
}
