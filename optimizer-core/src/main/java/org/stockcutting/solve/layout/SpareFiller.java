package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.stock.StockItem;

/**
 * Puts spare parts where wood is left over anyway: behind the last piece of a row, first in the smallest rest. Boards with zones and
 * boards that would have to be bought for a spare are left alone.
 */
final class SpareFiller {

    private final Job job;
    private final Fit fit;

    SpareFiller(Job job) {
        this.job = job;
        this.fit = new Fit(job.shop());
    }

    /** The same boards, with as many of the wanted spares as there is waste for. */
    List<Board> fill(List<Board> boards, List<RoughPiece> pieces) {
        List<Board> filled = new ArrayList<>(boards);
        Map<String, Integer> given = new TreeMap<>();
        for (RoughPiece piece : pieces) {
            if (piece.kind() == RoughPiece.Kind.WHOLE && piece.part().spares() > 0) {
                fillOne(filled, piece, given);
            }
        }
        return filled;
    }

    private void fillOne(List<Board> boards, RoughPiece piece, Map<String, Integer> given) {
        String id = piece.part().id();
        for (int b = 0; b < boards.size(); b++) {
            while (given.getOrDefault(id, 0) < piece.part().spares()) {
                int number = job.demand(piece.part()) + given.getOrDefault(id, 0) + 1;
                Board more = insert(boards.get(b), piece, number);
                if (more == null) {
                    break;
                }
                boards.set(b, more);
                given.merge(id, 1, Integer::sum);
            }
        }
    }

    private @Nullable Board insert(Board board, RoughPiece piece, int number) {
        StockItem stock = board.stock();
        if (!stock.zones().isEmpty()
                || !stock.condition().isFullWidth()
                || !fit.ways(piece, stock).straight()) {
            return null;
        }
        UsableArea area = UsableArea.of(stock, job.shop());
        Insertion insertion = new Insertion(
                board.labels().size(),
                piece.length().nanometres(),
                Fit.widthOn(piece, area).nanometres(),
                job.shop().kerf().crosscut().nanometres(),
                job.shop().kerf().rip().nanometres());
        Region region =
                insertion.into(board.region(), area.x1().nanometres(), area.y1().nanometres());
        if (region == null) {
            return null;
        }
        List<Label> labels = new ArrayList<>(board.labels());
        labels.add(new Label(piece, number, 0));
        return new Board(stock, region, labels);
    }

    /** One piece looking for a place; x1 and y1 are the far ends of the rectangle that a region may use. */
    private record Insertion(int label, long length, long width, long kerfX, long kerfY) {

        @Nullable Region into(Region region, long x1, long y1) {
            if (region instanceof Region.Item item) {
                Region beside = beside(item, false, x1, y1);
                return beside != null ? beside : beside(item, true, x1, y1);
            }
            Region.Split split = (Region.Split) region;
            List<Region> parts = new ArrayList<>(split.parts());
            for (int i = 0; i < parts.size(); i++) {
                Region part = parts.get(i);
                Region more = split.crosscut()
                        ? into(part, part.x() + part.length(), y1)
                        : into(part, x1, part.y() + part.width());
                if (more != null) {
                    parts.set(i, more);
                    return new Region.Split(
                            split.crosscut(), split.x(), split.y(), x1 - split.x(), y1 - split.y(), parts);
                }
            }
            return behind(split, x1, y1);
        }

        private @Nullable Region behind(Region.Split split, long x1, long y1) {
            Region last = split.parts().get(split.parts().size() - 1);
            long x = split.crosscut() ? last.x() + last.length() + kerfX : split.x();
            long y = split.crosscut() ? split.y() : last.y() + last.width() + kerfY;
            if (x + length > x1 || y + width > y1) {
                return null;
            }
            List<Region> parts = new ArrayList<>(split.parts());
            parts.add(new Region.Item(label, false, x, y, length, width));
            return new Region.Split(split.crosscut(), split.x(), split.y(), x1 - split.x(), y1 - split.y(), parts);
        }

        private @Nullable Region beside(Region.Item item, boolean crosscut, long x1, long y1) {
            Region.Split alone =
                    new Region.Split(crosscut, item.x(), item.y(), item.length(), item.width(), List.of(item));
            return behind(alone, x1, y1);
        }
    }
}
