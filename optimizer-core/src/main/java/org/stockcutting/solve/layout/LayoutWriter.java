package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.plan.Layout;
import org.stockcutting.solve.instance.Region;

/** Boards become layouts: equal boards are merged, everything gets its canonical order. */
public final class LayoutWriter {

    private LayoutWriter() {}

    /** A place by part and rectangle: what makes two boards equal. */
    private record Mark(String part, Length x, Length y, Length length, Length width, boolean turned) {}

    /**
     * Layouts of these boards, by stock id, most places first.
     *
     * @param spares true to fill spare parts into the waste
     */
    public static List<Layout> write(Job job, List<Board> boards, List<RoughPiece> pieces, boolean spares) {
        List<Board> sorted = new ArrayList<>(boards);
        sorted.sort(Comparator.comparing(board -> board.stock().id()));
        List<Board> filled = spares ? new SpareFiller(job).fill(sorted, pieces) : sorted;
        Map<String, Map<List<Mark>, List<Board>>> byStock = new LinkedHashMap<>();
        for (Board board : filled) {
            byStock.computeIfAbsent(board.stock().id(), id -> new LinkedHashMap<>())
                    .computeIfAbsent(marks(job, board), m -> new ArrayList<>())
                    .add(board);
        }
        List<Layout> layouts = new ArrayList<>();
        for (Map<List<Mark>, List<Board>> ofStock : byStock.values()) {
            List<Layout> own = new ArrayList<>();
            ofStock.values().forEach(equal -> own.add(layout(job, equal)));
            own.sort(CANONICAL);
            layouts.addAll(own);
        }
        return layouts;
    }

    private static final Comparator<Layout> CANONICAL =
            Comparator.<Layout>comparingInt(layout -> -layout.repeat()).thenComparing(LayoutWriter::signature);

    private static String signature(Layout layout) {
        StringBuilder text = new StringBuilder();
        for (PlacedPiece piece : layout.pieces()) {
            text.append(String.format(
                    "%015d %015d %s %s;",
                    piece.x().nanometres(), piece.y().nanometres(), piece.part(), piece.numbers()));
        }
        return text.toString();
    }

    private static List<Mark> marks(Job job, Board board) {
        List<Mark> marks = new ArrayList<>();
        for (Region.Item place : inOrder(board)) {
            PlacedPiece piece = piece(job, board, place, List.of(), List.of());
            marks.add(new Mark(piece.part(), piece.x(), piece.y(), piece.length(), piece.width(), piece.turned()));
        }
        return marks;
    }

    private static List<Region.Item> inOrder(Board board) {
        List<Region.Item> places = Board.places(board.region());
        places.sort(Comparator.comparingLong(Region.Item::x).thenComparingLong(Region.Item::y));
        return places;
    }

    private static Layout layout(Job job, List<Board> equal) {
        Board first = equal.get(0);
        List<List<Region.Item>> places =
                equal.stream().map(LayoutWriter::inOrder).toList();
        List<PlacedPiece> pieces = new ArrayList<>();
        for (int p = 0; p < places.get(0).size(); p++) {
            List<Integer> numbers = new ArrayList<>();
            List<Integer> members = new ArrayList<>();
            for (int b = 0; b < equal.size(); b++) {
                Label label = equal.get(b).labels().get(places.get(b).get(p).item());
                numbers.add(label.number());
                if (label.member() > 0) {
                    members.add(label.member());
                }
            }
            pieces.add(piece(job, first, places.get(0).get(p), numbers, members));
        }
        CutTreeWriter.Written written = CutTreeWriter.write(first, job.shop());
        return new Layout(
                first.stock().id(),
                equal.size(),
                first.stock().length(),
                first.stock().width(),
                first.stock().thickness(),
                pieces,
                written.tree(),
                written.leftOvers());
    }

    private static PlacedPiece piece(
            Job job, Board board, Region.Item place, List<Integer> numbers, List<Integer> members) {
        RoughPiece piece = board.labels().get(place.item()).piece();
        return new PlacedPiece(
                piece.part().id(),
                numbers,
                members,
                Length.ofNanometres(place.x()),
                Length.ofNanometres(place.y()),
                piece.length(),
                Fit.widthOn(piece, UsableArea.of(board.stock(), job.shop())),
                place.turned());
    }
}
