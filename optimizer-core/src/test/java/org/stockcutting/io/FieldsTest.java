package org.stockcutting.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.job.Fault;

/** The reader and the field table know the same fields: each row is tried on a document that holds every field. */
class FieldsTest {

    private static final Map<String, String> POINTERS = Documents.patterns(Documents.tree("every-field.json"));

    static Stream<Field> readable() {
        return Fields.JOB.all().stream().filter(f -> !f.later());
    }

    static Stream<Field> later() {
        return Fields.JOB.all().stream().filter(Field::later);
    }

    static Stream<Field> required() {
        return readable().filter(Field::required);
    }

    static Stream<Field> withStandard() {
        return readable().filter(f -> f.standard() != null);
    }

    static Stream<Field> withWords() {
        return readable().filter(f -> !f.words().isEmpty());
    }

    private static List<Fault> faults(ObjectNode doc) {
        return new JobReader().read(doc.toString()).faults();
    }

    @Test
    void theDocumentOfThisTestHoldsEveryReadableFieldAndIsValid() {
        assertThat(POINTERS.keySet())
                .containsExactlyInAnyOrderElementsOf(
                        readable().map(Field::pointer).toList());
        assertThat(faults(Documents.tree("every-field.json"))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("readable")
    void everyFieldIsReadAndItsTypeIsChecked(Field field) {
        ObjectNode doc = Documents.tree("every-field.json");
        String pointer = POINTERS.get(field.pointer());
        JsonNode wrong = switch (field.type()) {
            case TEXT, WORD -> IntNode.valueOf(7);
            case INTEGER, BOOLEAN -> TextNode.valueOf("two");
            default -> BooleanNode.TRUE;
        };
        Documents.set(doc, pointer, wrong);
        assertThat(faults(doc)).extracting(Fault::pointer, Fault::code).contains(tuple(pointer, "wrong-type"));
    }

    @ParameterizedTest
    @MethodSource("later")
    void fieldsOfLaterVersionsAreRefusedByName(Field field) {
        ObjectNode doc = Documents.tree("every-field.json");
        // The document has a field beside it.
        String beside = readable()
                .filter(other -> other.parent().equals(field.parent()))
                .map(other -> POINTERS.get(other.pointer()))
                .findFirst()
                .orElseThrow();
        String parent = beside.substring(0, beside.lastIndexOf('/'));
        ((ObjectNode) doc.at(parent)).put(field.name(), "something");
        assertThat(faults(doc))
                .extracting(Fault::pointer, Fault::code)
                .containsExactly(tuple(parent + "/" + field.name(), "not-yet-supported"));
        ((ObjectNode) doc.at(parent)).putNull(field.name());
        assertThat(faults(doc)).as("null says nothing").isEmpty();
    }

    @ParameterizedTest
    @MethodSource("required")
    void neededFieldsAreMissed(Field field) {
        ObjectNode doc = Documents.tree("every-field.json");
        String pointer = POINTERS.get(field.pointer());
        Documents.remove(doc, pointer);
        assertThat(faults(doc)).extracting(Fault::pointer, Fault::code).contains(tuple(pointer, "missing"));
    }

    @ParameterizedTest
    @MethodSource("withStandard")
    void defaultsAreFilledInAndNoted(Field field) {
        ObjectNode doc = Documents.tree("every-field.json");
        String pointer = POINTERS.get(field.pointer());
        Documents.remove(doc, pointer);
        JobReading reading = new JobReader().read(doc.toString());
        String name = reading.job() == null
                ? pointer
                : org.stockcutting.job.JobOrder.of(reading.job()).byId(pointer);
        assertThat(reading.defaults()).containsKey(name);
        String noted = reading.defaults().get(name);
        assertThat(field.standard()).as("noted as %s", noted).startsWith(noted);
    }

    @ParameterizedTest
    @MethodSource("withWords")
    void everyWordIsKnownAndNoOther(Field field) {
        String pointer = POINTERS.get(field.pointer());
        for (String word : field.words()) {
            ObjectNode doc = Documents.tree("every-field.json");
            Documents.set(doc, pointer, TextNode.valueOf(word));
            assertThat(faults(doc)).extracting(Fault::code).doesNotContain("unknown-word");
        }
        for (String word : field.laterWords()) {
            ObjectNode doc = Documents.tree("every-field.json");
            Documents.set(doc, pointer, TextNode.valueOf(word));
            assertThat(faults(doc))
                    .extracting(Fault::pointer, Fault::code)
                    .contains(tuple(pointer, "not-yet-supported"));
        }
        ObjectNode doc = Documents.tree("every-field.json");
        Documents.set(doc, pointer, TextNode.valueOf("zigzag"));
        assertThat(faults(doc)).extracting(Fault::pointer, Fault::code).contains(tuple(pointer, "unknown-word"));
    }

    private static org.assertj.core.groups.Tuple tuple(Object... values) {
        return org.assertj.core.groups.Tuple.tuple(values);
    }
}
