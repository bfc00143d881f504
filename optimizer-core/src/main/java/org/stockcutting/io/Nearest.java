package org.stockcutting.io;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds the word a slip of the pen was meant to be. */
final class Nearest {

    private Nearest() {}

    /** The known word at the least edit distance (Levenshtein 1966), first by order, or null if none is near. */
    static @Nullable String of(String word, Collection<String> known) {
        String best = null;
        int least = Math.max(1, word.length() / 3) + 1;
        String small = plain(word);
        for (String candidate : known) {
            if (Math.abs(candidate.length() - word.length()) < least) {
                int distance = distance(small, plain(candidate));
                if (distance < least) {
                    least = distance;
                    best = candidate;
                }
            }
        }
        return best;
    }

    /** A sentence that offers the nearest word, or nothing. */
    static String hint(String word, Collection<String> known) {
        String nearest = of(word, known);
        return nearest == null ? "" : " Did you mean \"" + nearest + "\"?";
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace("_", "").replace("-", "").replace(" ", "");
    }

    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
