package org.stockcutting.draw;

/**
 * Text from a job made fit for paper. Control characters, halves of surrogate pairs and what no text format can carry become a
 * replacement mark. Marks that turn the direction of writing do too: one of them in a part's name could make the size behind it read
 * backwards. A name that really is written from right to left keeps its letters; a mark behind it keeps what follows in order (Unicode
 * Standard Annex 9, bidirectional algorithm).
 */
public final class SafeText {

    private static final int REPLACEMENT = 0xFFFD;
    private static final char LEFT_TO_RIGHT_MARK = '\u200E';

    private SafeText() {}

    /** The text with every dangerous character replaced; nothing is added. */
    public static String clean(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().map(c -> isDangerous(c) ? REPLACEMENT : c).forEach(out::appendCodePoint);
        return out.toString();
    }

    /** Clean text with a mark after every stretch written from right to left, for a reader that orders text itself. */
    public static String ordered(String text) {
        String clean = clean(text);
        StringBuilder out = new StringBuilder(clean.length());
        boolean rightToLeft = false;
        for (int i = 0; i < clean.length(); i += Character.charCount(clean.codePointAt(i))) {
            int c = clean.codePointAt(i);
            boolean now = isRightToLeft(c);
            if (rightToLeft && !now) {
                out.append(LEFT_TO_RIGHT_MARK);
            }
            out.appendCodePoint(c);
            rightToLeft = now;
        }
        return rightToLeft ? out.append(LEFT_TO_RIGHT_MARK).toString() : out.toString();
    }

    /** True for letters of scripts that are written from right to left. */
    public static boolean isRightToLeft(int codePoint) {
        byte direction = Character.getDirectionality(codePoint);
        return direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
    }

    private static boolean isDangerous(int c) {
        return Character.isISOControl(c)
                || c >= 0xD800 && c <= 0xDFFF
                || (c & 0xFFFE) == 0xFFFE
                || c == 0x2028
                || c == 0x2029
                || isDirectionMark(c);
    }

    private static boolean isDirectionMark(int c) {
        return c == 0x061C || c == 0x200E || c == 0x200F || c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069;
    }
}
