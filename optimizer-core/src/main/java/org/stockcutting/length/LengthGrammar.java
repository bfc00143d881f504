package org.stockcutting.length;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The shapes of length text, once typographic signs have become plain ones. */
final class LengthGrammar {

    /** Longest text that is looked at, in characters. */
    static final int LONGEST_TEXT = 64;
    /** Groups of one number: whole, numerator, denominator, plain decimal. */
    static final int NUMBER_GROUPS = 4;
    /** Group of the unit after a single number. */
    static final int SINGLE_UNIT = 5;

    private static final Map<String, LengthUnit> UNITS = Map.ofEntries(
            Map.entry("\"", LengthUnit.INCH),
            Map.entry("in", LengthUnit.INCH),
            Map.entry("inch", LengthUnit.INCH),
            Map.entry("inches", LengthUnit.INCH),
            Map.entry("'", LengthUnit.FOOT),
            Map.entry("ft", LengthUnit.FOOT),
            Map.entry("foot", LengthUnit.FOOT),
            Map.entry("feet", LengthUnit.FOOT),
            Map.entry("mm", LengthUnit.MILLIMETRE),
            Map.entry("cm", LengthUnit.CENTIMETRE),
            Map.entry("m", LengthUnit.METRE));

    /** Vulgar fractions stand a space away from the number before them, so that 1 and a half does not become 11/2. */
    private static final Map<Character, String> SIGNS = Map.ofEntries(
            Map.entry('\u00bc', " 1/4"),
            Map.entry('\u00bd', " 1/2"),
            Map.entry('\u00be', " 3/4"),
            Map.entry('\u215b', " 1/8"),
            Map.entry('\u215c', " 3/8"),
            Map.entry('\u215d', " 5/8"),
            Map.entry('\u215e', " 7/8"),
            Map.entry('\u2032', "'"),
            Map.entry('\u2018', "'"),
            Map.entry('\u2019', "'"),
            Map.entry('\u2033', "\""),
            Map.entry('\u201c', "\""),
            Map.entry('\u201d', "\""),
            Map.entry('\u2010', "-"),
            Map.entry('\u2011', "-"),
            Map.entry('\u2013', "-"),
            Map.entry('\u2212', "-"),
            Map.entry('\u2044', "/"),
            Map.entry('\u2215', "/"),
            Map.entry('\u00a0', " "),
            Map.entry('\u2009', " "),
            Map.entry('\u202f', " "),
            Map.entry('\t', " "));

    private static final Pattern SPACES = Pattern.compile(" {2,}");

    private final Pattern single;
    private final Pattern feetAndInches;

    LengthGrammar(char decimal) {
        String number = "(?:(?:([0-9]+)(?: |- ?))?([0-9]+) ?/ ?([0-9]+)|([0-9]+|[0-9]*"
                + Pattern.quote(String.valueOf(decimal)) + "[0-9]+))";
        single = Pattern.compile(number + " ?(\"|in|inch|inches|'|ft|foot|feet|mm|cm|m)?");
        feetAndInches =
                Pattern.compile(number + " ?(?:'|ft|foot|feet)(?: ?- ?| ?)" + number + " ?(?:\"|in|inch|inches)?");
    }

    Matcher single(String normalised) {
        return single.matcher(normalised);
    }

    Matcher feetAndInches(String normalised) {
        return feetAndInches.matcher(normalised);
    }

    static LengthUnit unit(@Nullable String word, LengthUnit plain) {
        LengthUnit named = word == null ? null : UNITS.get(word);
        return named == null ? plain : named;
    }

    /** Lower case, typographic signs made plain, runs of blanks made one. Text that is far too long stays as it is. */
    static String normalised(String text) {
        if (text.length() > 4 * LONGEST_TEXT) {
            return text;
        }
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            String sign = SIGNS.get(text.charAt(i));
            plain.append(sign == null ? String.valueOf(text.charAt(i)) : sign);
        }
        String lower = plain.toString().toLowerCase(Locale.ROOT).replace("''", "\"");
        return SPACES.matcher(lower).replaceAll(" ").strip();
    }
}
