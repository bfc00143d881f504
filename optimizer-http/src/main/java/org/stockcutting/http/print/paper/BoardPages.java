package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.stockcutting.draw.CutLines;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.draw.PagePicture;
import org.stockcutting.draw.PieceNames;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.http.print.BoardGroup;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.report.ChalkMarks;

/** One page, lying, for each board or group of boards that are cut alike: the picture, boxes to tick, readings, pieces. */
final class BoardPages {

    private static final double NOTE = 10;
    private static final double TABLE = 12;
    private static final double ROW = 19;
    private static final double READING = 13;
    /** More equal boards than this share rows. */
    private static final int MANY = 6;

    private final Job job;
    private final LayoutPainter painter;
    private final PrintedLengths lengths;
    private final PieceNames names;
    private final ChalkMarks marks;

    BoardPages(Job job) {
        this.job = job;
        painter = new LayoutPainter(job);
        lengths = new PrintedLengths(job.writing());
        names = new PieceNames(job);
        marks = new ChalkMarks(job);
    }

    void print(BoardGroup group, Flow flow) {
        Layout layout = group.layout();
        head(group, flow);
        List<Strip> strips = strips(group);
        int columns = columns(strips, flow);
        int shown = strips.stream().mapToInt(strip -> strip.lines(flow)).sum() / columns;
        double forStrips = Math.min(shown, 6) * ROW + 2 * READING * Flow.LEADING + 18;
        double most = Math.max(190, flow.room() - forStrips);
        PagePicture picture = painter.large(layout, flow.width(), most);
        flow.sheet().picture(picture.drawing(), flow.left(), flow.y());
        flow.gap(picture.drawing().height() + 2);
        readings(layout, flow);
        print(strips, columns, flow);
        picture.notes().forEach(note -> flow.paragraph(note, NOTE, 10));
        Table table = table(layout);
        if (!picture.complete() || (table.rows().size() + 2) * TABLE * Flow.LEADING + 14 <= flow.room()) {
            flow.gap(6);
            flow.table(table, TABLE);
        }
    }

    /** How many strips stand side by side: one, but where many equal boards have a few pieces each, as many as there is room for. */
    private static int columns(List<Strip> strips, Flow flow) {
        double widest =
                strips.stream().mapToDouble(strip -> strip.wide(flow)).max().orElse(0);
        return strips.size() <= MANY || widest > flow.width()
                ? 1
                : Math.max(1, (int) (flow.width() / (widest + Strip.GAP)));
    }

    private static void print(List<Strip> strips, int columns, Flow flow) {
        for (int i = 0; i < strips.size(); i++) {
            if (i % columns == 0) {
                flow.keep(ROW);
                flow.gap(ROW);
            }
            strips.get(i).print(flow, i % columns * flow.width() / columns);
        }
    }

    private void head(BoardGroup group, Flow flow) {
        String alike =
                group.layout().repeat() == 1 ? "" : ": cut " + group.layout().repeat() + " alike";
        for (String line : flow.face().wrapped(group.title() + alike, 24, flow.width())) {
            flow.line(line, 0, 24);
        }
        flow.paragraph(painter.boardText(group.layout()) + ". Readings run from the heavy lines.");
        flow.paragraph(
                "Good face up on a table saw, a mitre saw or with a hand saw; down under a hand-held circular saw or a jigsaw.",
                NOTE,
                0);
    }

    private void readings(Layout layout, Flow flow) {
        CutLines cuts = CutLines.of(layout);
        readings("From the end: ", cuts.readings(Direction.CROSSCUT), flow);
        readings("From the edge: ", cuts.readings(Direction.RIP), flow);
    }

    private void readings(String lead, List<Length> readings, Flow flow) {
        if (!readings.isEmpty()) {
            String text =
                    String.join("   ", readings.stream().map(lengths::position).toList());
            flow.paragraph(lead + text, READING, 20);
        }
    }

    /** One strip of boxes a board: the board itself, then its pieces as they lie. */
    private List<Strip> strips(BoardGroup group) {
        List<Strip> strips = new ArrayList<>();
        for (int copy = 0; copy < group.layout().repeat(); copy++) {
            List<String> ticks = new ArrayList<>();
            for (PlacedPiece piece : group.layout().pieces()) {
                int member = piece.members().isEmpty() ? 0 : piece.members().get(copy);
                int number = piece.numbers().get(copy);
                ticks.add(
                        member == 0
                                ? marks.of(piece.part(), names.gang(piece.part(), number))
                                : marks.of(piece.part(), number, member));
            }
            strips.add(new Strip("#" + (group.first() + copy), ticks));
        }
        return strips;
    }

    private Table table(Layout layout) {
        Table table = new Table()
                .column("mark")
                .column("part")
                .column("size, " + lengths.unit())
                .numbers("from the end")
                .numbers("from the edge")
                .column("finished");
        Map<String, String> finished = new FinishedSizes(job, lengths).byPart();
        for (PlacedPiece piece : layout.pieces()) {
            table.row(
                    names.mark(piece),
                    piece.part(),
                    lengths.part(piece.length()) + " x " + lengths.part(piece.width())
                            + (piece.turned() ? ", turned" : ""),
                    lengths.position(piece.x()),
                    lengths.position(piece.y()),
                    finished.getOrDefault(piece.part(), ""));
        }
        return table;
    }

    /** Boxes to tick in a row, with a name before them. */
    private record Strip(String lead, List<String> ticks) {

        private static final double SIZE = 14;
        private static final double INDENT = 46;
        private static final double GAP = 12;

        int lines(Flow flow) {
            int lines = 1;
            double x = INDENT;
            for (String tick : ticks) {
                double wide = wide(tick, flow);
                if (x + wide > flow.width()) {
                    lines++;
                    x = INDENT;
                }
                x += wide;
            }
            return lines;
        }

        /** How wide it is in one row. */
        double wide(Flow flow) {
            return start(flow)
                    + ticks.stream().mapToDouble(tick -> wide(tick, flow)).sum();
        }

        private double start(Flow flow) {
            return Math.max(INDENT, PdfSheet.TICK + 3 + flow.face().width(lead, SIZE) + GAP);
        }

        void print(Flow flow, double indent) {
            flow.sheet().tick(flow.left() + indent, flow.y() - 4);
            flow.sheet().text(lead, flow.left() + indent + PdfSheet.TICK + 3, flow.y() - 4, SIZE);
            double x = indent + start(flow);
            for (String tick : ticks) {
                double wide = wide(tick, flow);
                if (x + wide > flow.width() && x > indent + INDENT) {
                    flow.keep(ROW);
                    flow.gap(ROW);
                    x = indent + INDENT;
                }
                flow.sheet().tick(flow.left() + x, flow.y() - 4);
                flow.sheet().text(tick, flow.left() + x + PdfSheet.TICK + 3, flow.y() - 4, SIZE);
                x += wide;
            }
        }

        private static double wide(String tick, Flow flow) {
            return PdfSheet.TICK + 3 + flow.face().width(tick, SIZE) + GAP;
        }
    }
}
