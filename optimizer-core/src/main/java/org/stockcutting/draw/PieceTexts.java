package org.stockcutting.draw;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.pattern.PlacedPiece;

/** What is written on a piece, from the most that fits to the least. */
final class PieceTexts {

    private final Medium medium;
    private final PieceNames names;
    private final PrintedLengths print;

    PieceTexts(Medium medium, PieceNames names, PrintedLengths print) {
        this.medium = medium;
        this.names = names;
        this.print = print;
    }

    /** The fullest text that fits into the box, or null if none does. */
    @Nullable PieceLabel label(PlacedPiece piece, Rectangle2D box) {
        return switch (medium.lettering()) {
            case NAMES -> PieceLabel.fit(names.name(piece), size(piece), box);
            case MARKS_AND_NAMES -> markAndName(piece, box);
            case MARKS -> {
                String mark = names.mark(piece);
                String length = print.part(piece.length());
                yield fit(List.of(List.of(mark, length), List.of(mark + "  " + length)), box);
            }
        };
    }

    /** The text of a piece that has no room for more, or its key into the legend. */
    String key(PlacedPiece piece, Legend legend) {
        return medium.lettering() == Medium.Lettering.NAMES
                ? "[" + legend.keyOf(piece, names.numbers(piece), size(piece)) + "]"
                : names.mark(piece);
    }

    /** A key as a label, or null if even that does not fit. */
    @Nullable PieceLabel keyLabel(String key, Rectangle2D box) {
        List<Integer> fonts = medium.lettering() == Medium.Lettering.NAMES
                ? List.of(Pen.SMALL, Pen.TINY)
                : List.of(Pen.LARGE, Pen.SMALL, Pen.TINY, Pen.LEAST);
        return PieceLabel.key(key, fonts, box);
    }

    /** Says where a piece lies that is too small even for its key, unless a table beside the picture does. */
    void tooSmall(String key, PlacedPiece piece, Legend legend) {
        String x = print.position(piece.x());
        String y = print.position(piece.y());
        switch (medium.lettering()) {
            case NAMES ->
                legend.note("Too small for its key: " + key + " at " + x + " from the end, " + y + " from the edge.");
            case MARKS -> legend.note(LayoutPainter.NOT_SHOWN + key + " at " + x + ", " + y + ".");
            case MARKS_AND_NAMES -> {}
        }
    }

    /** True if the label leaves numbers out and nothing beside the drawing tells them. */
    boolean needsNumbers(PlacedPiece piece) {
        return medium.lettering() == Medium.Lettering.NAMES && names.isShortened(piece);
    }

    String size(PlacedPiece piece) {
        return print.part(piece.length()) + " x " + print.part(piece.width());
    }

    private @Nullable PieceLabel markAndName(PlacedPiece piece, Rectangle2D box) {
        String mark = names.mark(piece);
        String name = piece.part();
        String size = size(piece);
        PieceLabel full = fit(
                List.of(
                        List.of(mark, name, size),
                        List.of(mark + "  " + name, size),
                        List.of(mark + "  " + name + "  " + size)),
                box);
        return full != null ? full : fit(List.of(List.of(mark, size), List.of(mark + "  " + size)), box);
    }

    private @Nullable PieceLabel fit(List<List<String>> texts, Rectangle2D box) {
        return PieceLabel.upright(texts, medium.fonts(), box);
    }
}
