package org.stockcutting.draw;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** The board itself with everything on it. Which label goes where is decided once, when the legend is gathered. */
final class BoardPicture {

    private final Layout layout;
    private final StockItem stock;
    private final Frame frame;
    private final Medium medium;
    private final PrintedLengths print;
    private final PieceNames names;
    private final SharedLines shared;
    private final PieceTexts texts;
    private final CutLines cuts;
    private final List<Labelled> labels = new ArrayList<>();
    private final List<KeyRow.Key> keysAbove = new ArrayList<>();
    private final Legend legend = new Legend();
    private boolean complete = true;

    /** A piece with its name or its key into the legend, or null if neither fits. */
    private record Labelled(
            PlacedPiece piece, Rectangle2D box, @Nullable PieceLabel label) {}

    BoardPicture(
            Layout layout,
            StockItem stock,
            Frame frame,
            Medium medium,
            PrintedLengths print,
            PieceNames names,
            SharedLines shared) {
        this.layout = layout;
        this.stock = stock;
        this.frame = frame;
        this.medium = medium;
        this.print = print;
        this.names = names;
        this.shared = shared;
        texts = new PieceTexts(medium, names, print);
        cuts = CutLines.of(layout);
        for (PlacedPiece piece : layout.pieces()) {
            labels.add(label(piece));
        }
        List<KeyRow.Key> left = KeyRow.of(keysAbove).left();
        // On a page the table of pieces beside the picture tells where they are.
        if (!left.isEmpty() && medium.lettering() != Medium.Lettering.MARKS_AND_NAMES) {
            legend.note("No room for: "
                    + String.join(
                            ", ",
                            left.stream()
                                    .map(key -> key.text() + " at " + key.reading())
                                    .toList()));
        }
        if (medium.lettering() == Medium.Lettering.NAMES) {
            readings().note(cuts, legend);
        }
    }

    /** True if every piece carries all that its medium wants on it. */
    boolean isComplete() {
        return complete;
    }

    /** True if a piece has its key above the board. */
    boolean hasKeysAbove() {
        return !keysAbove.isEmpty();
    }

    /** What could not be said on the board. */
    Legend legend() {
        return legend;
    }

    /** Paper y below which nothing of the picture lies. */
    double bottom() {
        return readings().bottom(cuts);
    }

    void draw(Pen pen) {
        pen.bare(frame.board());
        for (CutLines.Box trim : cuts.trims()) {
            pen.trim(box(trim));
        }
        for (Layout.LeftOver rest : layout.offcuts()) {
            leftOver(pen, rest);
        }
        for (Labelled piece : labels) {
            pen.piece(piece.box());
            shared.draw(piece.piece(), piece.box(), pen);
        }
        for (CutLines.Line line : cuts.lines()) {
            cut(pen, line);
        }
        for (Zone zone : stock.zones()) {
            zone(pen, zone);
        }
        Length narrow = stock.condition().widthEnd();
        if (narrow != null) {
            Rectangle2D far = frame.box(
                    layout.length(), narrow, Length.ZERO, layout.width().minus(narrow));
            pen.line(frame.left(), frame.board().getMinY(), far.getX(), far.getMaxY(), 1.6f);
        }
        labels(pen);
        readings().draw(cuts, pen);
        pen.outline(frame.board(), 1.6f);
        pen.line(frame.left(), frame.top() - 6, frame.left(), frame.bottom() + 6, 4f);
        if (cuts.lines().stream().anyMatch(line -> line.cut() == Direction.RIP)) {
            pen.line(frame.left() - 6, frame.bottom(), frame.right() + 6, frame.bottom(), 4f);
        }
    }

    private Readings readings() {
        return new Readings(frame, print, medium.readings(), medium.rows());
    }

    private Labelled label(PlacedPiece piece) {
        Rectangle2D box = frame.box(piece.x(), piece.y(), piece.extentX(), piece.extentY());
        PieceLabel label = texts.label(piece, box);
        if (label == null) {
            return keyed(piece, box);
        }
        if (texts.needsNumbers(piece)) {
            legend.note(names.name(piece) + " at " + print.position(piece.x()) + ": board by board "
                    + names.fullNumbers(piece));
        }
        return new Labelled(piece, box, label);
    }

    private Labelled keyed(PlacedPiece piece, Rectangle2D box) {
        complete = false;
        String key = texts.key(piece, legend);
        PieceLabel label = texts.keyLabel(key, box);
        if (label == null && piece.y().plus(piece.extentY()).equals(layout.width())) {
            keysAbove.add(new KeyRow.Key(key, print.position(piece.x()), box.getCenterX(), box.getMinY()));
        } else if (label == null) {
            texts.tooSmall(key, piece, legend);
        }
        return new Labelled(piece, box, label);
    }

    private void labels(Pen pen) {
        boolean onWhite = !stock.zones().isEmpty();
        for (Labelled piece : labels) {
            PieceLabel label = piece.label();
            if (label != null) {
                pen.centred(label.lines(), piece.box(), label.size(), label.upwards(), onWhite);
            }
        }
        KeyRow.of(keysAbove).draw(frame, pen);
    }

    private void leftOver(Pen pen, Layout.LeftOver rest) {
        Rectangle2D box = frame.box(rest.x(), rest.y(), rest.length(), rest.width());
        pen.offcut(box, rest.keep());
        String size = print.gap(rest.length()) + " x " + print.gap(rest.width());
        PieceLabel label = rest.keep() ? PieceLabel.fit("keep", size, box) : PieceLabel.fit("offcut", size, box);
        if (label != null) {
            pen.centred(label.lines(), box, label.size(), label.upwards(), true);
        } else if (rest.keep()) {
            legend.note("Keep the leftover at " + print.position(rest.x()) + ", " + size + ".");
        }
    }

    private void cut(Pen pen, CutLines.Line line) {
        Rectangle2D slot = box(line.slot());
        if (line.cut() == Direction.CROSSCUT) {
            pen.dashed(slot.getCenterX(), slot.getMinY(), slot.getCenterX(), slot.getMaxY(), 4f);
        } else {
            pen.dashed(slot.getMinX(), slot.getCenterY(), slot.getMaxX(), slot.getCenterY(), 4f);
        }
    }

    private void zone(Pen pen, Zone zone) {
        Length from = zone.fromEdge() == null ? Length.ZERO : zone.fromEdge();
        Length to = zone.toEdge() == null ? layout.width() : zone.toEdge();
        pen.hatch(
                frame.box(zone.from(), from, zone.to().minus(zone.from()), to.minus(from)),
                zone.severity() == Zone.Severity.UNUSABLE);
    }

    private Rectangle2D box(CutLines.Box box) {
        return frame.box(box.x(), box.y(), box.extentX(), box.extentY());
    }
}
