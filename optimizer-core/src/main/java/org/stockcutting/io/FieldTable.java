package org.stockcutting.io;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The fields of one kind of document, in the order they are written. */
public final class FieldTable {

    private final Map<String, Field> byPointer = new LinkedHashMap<>();
    private final Map<String, Map<String, Field>> byParent = new LinkedHashMap<>();

    FieldTable(List<Field> fields) {
        for (Field field : fields) {
            if (byPointer.put(field.pointer(), field) != null) {
                throw new IllegalArgumentException("field table has " + field.pointer() + " twice");
            }
            byParent.computeIfAbsent(field.parent(), p -> new LinkedHashMap<>()).put(field.name(), field);
        }
    }

    /** All fields, in order. */
    public List<Field> all() {
        return List.copyOf(byPointer.values());
    }

    /** Fields of the object at this pattern, by name, in order; empty if no such object is known. */
    public Map<String, Field> of(String parent) {
        return byParent.getOrDefault(parent, Map.of());
    }

    /** The field at this pattern, or null. */
    public @Nullable Field find(String pointer) {
        return byPointer.get(pointer);
    }

    static Builder of() {
        return new Builder();
    }

    /** Collects rows; {@code in} sets the object that the next rows belong to. */
    static final class Builder {
        private final List<Field> rows = new ArrayList<>();
        private String parent = "";

        Builder in(String pattern) {
            parent = pattern;
            return this;
        }

        Builder needs(String name, FieldType type, String meaning) {
            return row(name, type, true, null, List.of(), meaning);
        }

        Builder needsWord(String name, List<String> words, String meaning) {
            return row(name, FieldType.WORD, true, null, words, meaning);
        }

        Builder may(String name, FieldType type, String meaning) {
            return row(name, type, false, null, List.of(), meaning);
        }

        Builder mayWord(String name, List<String> words, String meaning) {
            return row(name, FieldType.WORD, false, null, words, meaning);
        }

        Builder or(String name, FieldType type, String standard, String meaning) {
            return row(name, type, false, standard, List.of(), meaning);
        }

        Builder orWord(String name, String standard, List<String> words, String meaning) {
            return row(name, FieldType.WORD, false, standard, words, meaning);
        }

        Builder later(String name, String meaning) {
            rows.add(new Field(parent + "/" + name, FieldType.LATER, false, null, true, List.of(), List.of(), meaning));
            return this;
        }

        /** The row just added also knows these words, but refuses them. */
        Builder laterWords(String... words) {
            int last = rows.size() - 1;
            Field f = rows.get(last);
            rows.set(
                    last,
                    new Field(
                            f.pointer(),
                            f.type(),
                            f.required(),
                            f.standard(),
                            f.later(),
                            f.words(),
                            List.of(words),
                            f.meaning()));
            return this;
        }

        /** Adds the rows of a block that occurs in several places. */
        Builder with(Function<Builder, Builder> block) {
            return block.apply(this);
        }

        FieldTable build() {
            return new FieldTable(rows);
        }

        private Builder row(
                String name,
                FieldType type,
                boolean required,
                @Nullable String standard,
                List<String> words,
                String meaning) {
            rows.add(new Field(parent + "/" + name, type, required, standard, false, words, List.of(), meaning));
            return this;
        }
    }
}
