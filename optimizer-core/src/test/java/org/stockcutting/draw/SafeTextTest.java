package org.stockcutting.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.Bidi;
import org.junit.jupiter.api.Test;

class SafeTextTest {

    @Test
    void marksThatTurnTheDirectionAreReplaced() {
        // Unicode Standard Annex 9, section 2: the explicit directional formatting characters.
        String marks = "\u061C\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069";

        assertThat(SafeText.clean("a" + marks + "b")).isEqualTo("a" + "\uFFFD".repeat(marks.length()) + "b");
        assertThat(SafeText.clean("tab\t, bell\u0007, half \uD800, whole 🪵"))
                .isEqualTo("tab\uFFFD, bell\uFFFD, half \uFFFD, whole 🪵");
    }

    /** Without the mark the size would be ordered before the name by the algorithm of UAX 9; the JDK's own Bidi is the judge. */
    @Test
    void aSizeBehindANameFromRightToLeftKeepsItsPlace() {
        String name = "\u05E9\u05D5\u05DC\u05D7\u05DF";
        String text = name + " 41 x 3";

        assertThat(levelOf(text, "41")).isGreaterThan(0);
        assertThat(levelOf(SafeText.ordered(text), "41")).isZero();
        assertThat(SafeText.ordered("rail #1")).isEqualTo("rail #1");
    }

    private static int levelOf(String text, String part) {
        return new Bidi(text, Bidi.DIRECTION_LEFT_TO_RIGHT).getLevelAt(text.indexOf(part));
    }
}
