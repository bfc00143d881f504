package org.stockcutting.bench.instances;

/** A file does not have the form that its set is published in; the text says where, what was got and what is wanted. */
public final class InstanceFormatException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    InstanceFormatException(String text) {
        super(text);
    }
}
