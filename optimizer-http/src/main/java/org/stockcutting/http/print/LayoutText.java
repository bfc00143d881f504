package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.draw.CutLines;
import org.stockcutting.draw.CutLines.Box;
import org.stockcutting.draw.PieceNames;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** One board of the plan: a picture in characters, running tape readings, and a table of pieces where the picture cannot say all. */
final class LayoutText {

    private static final int MOST_ROWS = 33;
    private static final int LEAST_SHEET_ROWS = 9;
    private static final List<Boolean> RIGHT = List.of(true, false, true, true, true);

    private final PrintedLengths lengths;
    private final PieceNames names;

    LayoutText(PrintedLengths lengths, PieceNames names) {
        this.lengths = lengths;
        this.names = names;
    }

    void print(Layout layout, StockItem stock, int firstBoard, TextPage page) {
        page.line(title(layout, stock, firstBoard));
        CutLines cuts = CutLines.of(layout);
        List<Length> edge = cuts.readings(Direction.RIP);
        boolean allNamed = picture(layout, stock, cuts, page);
        readings("  from the end: ", cuts.readings(Direction.CROSSCUT), page);
        readings("  from the edge: ", edge, page);
        if (!allNamed || !edge.isEmpty()) {
            table(layout, page);
        }
    }

    private String title(Layout layout, StockItem stock, int firstBoard) {
        String numbers = layout.repeat() == 1
                ? " #" + firstBoard
                : " #" + firstBoard + " to #" + (firstBoard + layout.repeat() - 1) + ", " + layout.repeat()
                        + " cut alike";
        return Clip.to(layout.stock(), 40) + numbers + ": " + lengths.part(layout.length()) + " x "
                + lengths.part(layout.width()) + " x " + lengths.part(layout.thickness()) + " " + lengths.unit() + ", "
                + stock.material() + (stock.grade() == null ? "" : " " + Clip.to(stock.grade(), 30));
    }

    private boolean picture(Layout layout, StockItem stock, CutLines cuts, TextPage page) {
        CharacterPicture picture =
                new CharacterPicture(layout.length(), layout.width(), rows(layout, stock.form(), cuts));
        Box board = new Box(Length.ZERO, Length.ZERO, layout.length(), layout.width());
        picture.fill(board, '.');
        for (Box trim : cuts.trims()) {
            picture.fill(trim, '/');
            picture.outline(trim);
        }
        for (Layout.LeftOver rest : layout.offcuts()) {
            Box box = new Box(rest.x(), rest.y(), rest.length(), rest.width());
            picture.outline(box);
            if (rest.keep()) {
                picture.fill(box, ' ');
                picture.label(box, List.of("keep " + lengths.gap(rest.length()), "keep"));
            }
        }
        for (Zone zone : stock.zones()) {
            picture.fill(zoneBox(zone, layout), 'x');
        }
        boolean allNamed = true;
        for (int i = 0; i < layout.pieces().size(); i++) {
            PlacedPiece piece = layout.pieces().get(i);
            Box box = new Box(piece.x(), piece.y(), piece.extentX(), piece.extentY());
            picture.fill(box, ' ');
            picture.outline(box);
            if (!picture.label(box, labels(piece))) {
                picture.label(box, List.of("(" + (i + 1) + ")", Integer.toString(i + 1)));
                allNamed = false;
            }
            allNamed &= !names.isShortened(piece);
        }
        picture.outline(board);
        picture.lines().forEach(line -> page.line("  " + line));
        return allNamed;
    }

    private List<String> labels(PlacedPiece piece) {
        String name = names.name(piece);
        return List.of(name + "  " + lengths.part(piece.length()), name);
    }

    private static Box zoneBox(Zone zone, Layout layout) {
        Length from = zone.fromEdge() == null ? Length.ZERO : zone.fromEdge();
        Length to = zone.toEdge() == null ? layout.width() : zone.toEdge();
        return new Box(zone.from(), from, zone.to().minus(zone.from()), to.minus(from));
    }

    /** Enough rows that the narrowest strip still has room for its name; a character is about twice as high as wide. */
    private static int rows(Layout layout, Form form, CutLines cuts) {
        if (cuts.readings(Direction.RIP).isEmpty()) {
            return 3;
        }
        long width = layout.width().nanometres();
        long narrowest = layout.pieces().stream()
                .mapToLong(piece -> piece.extentY().nanometres())
                .min()
                .orElse(width);
        long strips = 2 * ((width + narrowest - 1) / narrowest) + 1;
        long scaled = form == Form.SHEET
                ? Math.max(
                        LEAST_SHEET_ROWS,
                        width * CharacterPicture.COLUMNS / (2 * layout.length().nanometres()))
                : 3;
        return (int) Math.min(MOST_ROWS, Math.max(scaled, strips));
    }

    private void readings(String lead, List<Length> readings, TextPage page) {
        if (!readings.isEmpty()) {
            page.wrapped(
                    lead
                            + String.join(
                                    "  ",
                                    readings.stream().map(lengths::position).toList()),
                    "    ");
        }
    }

    private void table(Layout layout, TextPage page) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("", "piece", "size", "from the end", "from the edge"));
        for (PlacedPiece piece : layout.pieces()) {
            String name = names.isShortened(piece) ? piece.part() + " #" + names.fullNumbers(piece) : names.name(piece);
            rows.add(List.of(
                    "(" + rows.size() + ")",
                    Clip.to(name, 46),
                    lengths.part(piece.length()) + " x " + lengths.part(piece.width()),
                    lengths.position(piece.x()),
                    lengths.position(piece.y())));
        }
        page.table(RIGHT, rows);
    }
}
