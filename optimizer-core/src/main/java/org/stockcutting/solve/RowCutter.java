package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Kerf;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.solve.layout.Label;

/** Cuts the runs on one board up into their pieces, a saw cut apart, first to last from the origin. */
final class RowCutter {

    private final Board board;
    private final Rows rows;
    private final Kerf kerf;
    private final List<Label> labels;

    private RowCutter(Board board, Rows rows, Kerf kerf) {
        this.board = board;
        this.rows = rows;
        this.kerf = kerf;
        this.labels = new ArrayList<>(board.labels());
    }

    static Board cut(Board board, Rows rows, Kerf kerf) {
        RowCutter cutter = new RowCutter(board, rows, kerf);
        Region region = cutter.cut(board.region());
        return Board.renumbered(board.stock(), region, cutter.labels);
    }

    private Region cut(Region region) {
        if (region instanceof Region.Item item) {
            Label label = board.labels().get(item.item());
            Row row = rows.rowOf(label.piece());
            return row == null ? item : run(item, row, label.number());
        }
        Region.Split split = (Region.Split) region;
        List<Region> parts = new ArrayList<>();
        for (Region part : split.parts()) {
            Region whole = cut(part);
            // A run in a row of cuts of its own direction is cut up with it.
            if (whole instanceof Region.Split inner
                    && part instanceof Region.Item
                    && inner.crosscut() == split.crosscut()) {
                parts.addAll(inner.parts());
            } else {
                parts.add(whole);
            }
        }
        return new Region.Split(split.crosscut(), split.x(), split.y(), split.length(), split.width(), parts);
    }

    private Region run(Region.Item item, Row row, int set) {
        boolean alongX = row.column() == item.turned();
        long step = (alongX ? kerf.crosscut() : kerf.rip()).nanometres();
        long x = item.x();
        long y = item.y();
        List<Region> parts = new ArrayList<>();
        for (RoughPiece piece : row.members()) {
            int quantity = piece.part().quantity();
            for (int n = 1; n <= quantity; n++) {
                long length = piece.length().nanometres();
                long width = piece.section() instanceof RoughSection.Sized sized
                        ? sized.width().nanometres()
                        : item.width();
                long along = item.turned() ? width : length;
                long across = item.turned() ? length : width;
                parts.add(new Region.Item(labels.size(), item.turned(), x, y, along, across));
                labels.add(new Label(piece, (set - 1) * quantity + n, 0));
                x += alongX ? along + step : 0;
                y += alongX ? 0 : across + step;
            }
        }
        if (parts.size() == 1) {
            return parts.get(0);
        }
        Region last = parts.get(parts.size() - 1);
        return new Region.Split(
                alongX,
                item.x(),
                item.y(),
                last.x() + last.length() - item.x(),
                last.y() + last.width() - item.y(),
                parts);
    }
}
