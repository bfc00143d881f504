package org.stockcutting.io;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One field of a document.
 *
 * @param pointer RFC 6901 pointer with {@code *} for any list index or free name, such as {@code /parts/*}{@code /length}
 * @param type what it holds
 * @param required true if an object without it is faulty
 * @param standard the text it defaults to, readable under every unit; null where absent means none, or where the default depends on
 *     other fields
 * @param later true if it is known but refused with {@code not-yet-supported}
 * @param words allowed words of a word field
 * @param laterWords words that are known but refused
 * @param meaning what it says, in a few words
 */
public record Field(
        String pointer,
        FieldType type,
        boolean required,
        @Nullable String standard,
        boolean later,
        List<String> words,
        List<String> laterWords,
        String meaning) {

    public Field {
        words = List.copyOf(words);
        laterWords = List.copyOf(laterWords);
    }

    /** Last step of the pointer. */
    public String name() {
        return pointer.substring(pointer.lastIndexOf('/') + 1);
    }

    /** Pointer of the object this field stands in; empty for fields of the document itself. */
    public String parent() {
        return pointer.substring(0, pointer.lastIndexOf('/'));
    }

    /** What the field takes, for messages. */
    public String wanted() {
        return words.isEmpty() ? type.wanted() : "one of " + String.join(", ", words);
    }
}
