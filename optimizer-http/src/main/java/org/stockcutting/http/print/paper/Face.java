package org.stockcutting.http.print.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.stockcutting.draw.SafeText;

/**
 * The one typeface of all prints, embedded: Liberation Sans (SIL Open Font License 1.1), which PDFBox carries. It has Latin, Greek,
 * Cyrillic and Hebrew letters; any other character prints as {@value #SUBSTITUTE}, and the document says so.
 */
final class Face {

    static final char SUBSTITUTE = '?';

    private static final String RESOURCE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final PDFont font;
    private final CmapLookup glyphs;
    private boolean substituted;

    Face(PDDocument document) throws IOException {
        TrueTypeFont parsed;
        try (InputStream in = PDDocument.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw new IllegalStateException("the typeface is missing from the program: " + RESOURCE);
            }
            parsed = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
        }
        glyphs = parsed.getUnicodeCmapLookup();
        font = PDType0Font.load(document, parsed, true);
    }

    PDFont font() {
        return font;
    }

    /** True once a character was printed as a substitute. */
    boolean hasSubstituted() {
        return substituted;
    }

    /** The text as it is put on paper: only characters that the typeface has, in the order in which they are seen. */
    String shown(String text) {
        int[] points = Normalizer.normalize(SafeText.clean(text), Normalizer.Form.NFC)
                .codePoints()
                .toArray();
        reverseRightToLeft(points);
        StringBuilder out = new StringBuilder(points.length);
        for (int point : points) {
            if (glyphs.getGlyphId(point) == 0) {
                substituted = true;
                out.append(SUBSTITUTE);
            } else {
                out.appendCodePoint(point);
            }
        }
        return out.toString();
    }

    double width(String text, double size) {
        return widthOfShown(shown(text), size);
    }

    double widthOfShown(String shown, double size) {
        try {
            return font.getStringWidth(shown) * size / 1000;
        } catch (IOException e) {
            throw new UncheckedIOException("the typeface in memory could not be read", e);
        }
    }

    /** The text cut off so that it fits, with two dots where something is missing. */
    String clipped(String text, double size, double room) {
        if (width(text, size) <= room) {
            return text;
        }
        int end = text.length();
        while (end > 0 && width(text.substring(0, end) + "..", size) > room) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end) + "..";
    }

    /** The text broken between words, and within a word that is wider than the room. */
    List<String> wrapped(String text, double size, double room) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, size) <= room) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (width(line, size) > room && line.codePointCount(0, line.length()) > 1) {
                int end = broken(line, size, room);
                lines.add(line.substring(0, end));
                line = line.substring(end);
            }
        }
        lines.add(line);
        return lines;
    }

    private int broken(String word, double size, double room) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length() && width(word.substring(0, word.offsetByCodePoints(end, 1)), size) <= room) {
            end = word.offsetByCodePoints(end, 1);
        }
        return end;
    }

    /** Words written from right to left are turned around, each stretch of them as one; everything else stays in place. */
    private static void reverseRightToLeft(int[] points) {
        int i = 0;
        while (i < points.length) {
            if (!SafeText.isRightToLeft(points[i])) {
                i++;
                continue;
            }
            int last = i;
            for (int j = i; j < points.length && (points[j] == ' ' || SafeText.isRightToLeft(points[j])); j++) {
                last = points[j] == ' ' ? last : j;
            }
            for (int a = i, b = last; a < b; a++, b--) {
                int swap = points[a];
                points[a] = points[b];
                points[b] = swap;
            }
            i = last + 1;
        }
    }
}
