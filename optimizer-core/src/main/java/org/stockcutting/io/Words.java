package org.stockcutting.io;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/** The words of an enum as they stand in documents. */
final class Words {

    private Words() {}

    static <E extends Enum<E>> List<String> of(E[] values, Function<E, String> word) {
        return Arrays.stream(values).map(word).toList();
    }
}
