package org.stockcutting.length;

/** Text or a number that is no length (or volume) the reader takes; the message is one sentence for a person. */
public final class LengthFormatException extends IllegalArgumentException {

    /** Not written in any of the forms. */
    public static final String NOT_A_LENGTH = "not-a-length";
    /** Well written, but not a whole number of nanometres. */
    public static final String NOT_EXACT = "not-exact";
    /** Negative, or beyond {@link LengthReader#LONGEST}. */
    public static final String OUT_OF_RANGE = "out-of-range";

    private static final long serialVersionUID = 1L;
    private static final int SHOWN = 40;

    private final String code;
    private final String got;
    private final String expected;

    LengthFormatException(String code, String got, String expected, String text) {
        super(text);
        this.code = code;
        this.got = got;
        this.expected = expected;
    }

    /** One of the three words above. */
    public String code() {
        return code;
    }

    /** What was found, shortened to 40 characters, control characters shown as {@code ?}. */
    public String got() {
        return got;
    }

    /** What is accepted; for {@code not-exact} the nearest exact value. */
    public String expected() {
        return expected;
    }

    /** Makes foreign text fit to be shown in a message. */
    static String shown(String text) {
        StringBuilder clean = new StringBuilder();
        text.codePoints().limit(SHOWN).map(c -> isUnprintable(c) ? '?' : c).forEach(clean::appendCodePoint);
        return text.codePointCount(0, text.length()) > SHOWN ? clean + "..." : clean.toString();
    }

    /** Controls, halves of a character, and signs that would turn the message's own direction around. */
    private static boolean isUnprintable(int codePoint) {
        int type = Character.getType(codePoint);
        return type == Character.CONTROL || type == Character.SURROGATE || type == Character.FORMAT;
    }
}
