package org.stockcutting.io;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;

/** Reads what is done to a part once it has its size: {@code taper}, {@code marks}, {@code fit} and {@code hand}. */
final class ShapingReader {

    private ShapingReader() {}

    static Shaping read(DocObject part) {
        List<Mark> marks = new ArrayList<>();
        for (DocObject mark : part.objects("marks")) {
            if (mark != null) {
                marks.add(mark(mark));
            }
        }
        return new Shaping(
                taper(part.object("taper")),
                marks,
                Or.of(part.word("fit", Shaping.Fit.values(), Shaping.Fit::word), Shaping.Fit.TO_SIZE),
                Or.of(part.word("hand", Shaping.Hand.values(), Shaping.Hand::word), Shaping.Hand.NONE),
                Or.of(part.length("tolerance"), Length.ZERO),
                ends(part.object("ends")));
    }

    private static @Nullable Ends ends(@Nullable DocObject ends) {
        return ends == null
                ? null
                : new Ends(
                        Or.of(ends.word("angle", Ends.Angle.values(), Ends.Angle::word), Ends.Angle.FOUR_SIDES),
                        Or.of(ends.integer("stick"), 1),
                        Or.of(ends.bool("flip"), false));
    }

    private static @Nullable Taper taper(@Nullable DocObject taper) {
        return taper == null
                ? null
                : new Taper(
                        taper.length("start"),
                        Or.size(taper.length("foot")),
                        Or.of(taper.word("faces", Taper.Faces.values(), Taper.Faces::word), Taper.Faces.INSIDE_TWO),
                        Or.of(taper.bool("nest"), false));
    }

    private static Mark mark(DocObject mark) {
        if (!mark.has("fromEnd") && !mark.has("fromEdge")) {
            mark.missing("fromEnd", "a reading from the end, from the edge, or both", "reading from the reference end");
        }
        return new Mark(
                Or.of(mark.text("purpose"), Or.NAME),
                mark.length("fromEnd"),
                mark.length("fromEdge"),
                mark.length("bore"),
                mark.length("depth"));
    }
}
