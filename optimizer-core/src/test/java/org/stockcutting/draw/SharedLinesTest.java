package org.stockcutting.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.Optimizer;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Job;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;

/**
 * Two legs in one blank, worked by hand: 17 long, 3-1/2 wide at the top, a foot of 1-3/4, tapered from 4-1/4 on. The slope goes on to the
 * reference end, where it is 3-1/2 + 1-3/4 x 4-1/4 / 12-3/4 = 4.0833 high (formula: common practice, no source).
 */
class SharedLinesTest {

    private static final double HIGH = 3.5 + 1.75 * 4.25 / 12.75;
    private static final double KERF = 0.125;

    private static Job job(String nest) {
        return new JobReader().read("""
                {"material": "ash", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
                 "parts": [{"id": "leg", "quantity": 4, "length": "17", "width": "3-1/2", "thickness": "1-3/4",
                            "taper": {"foot": "1-3/4", "faces": "one", "start": "4-1/4"%s}}],
                 "stock": [{"id": "b", "length": "36", "width": "7-1/2", "thickness": "1-3/4", "price": {"amount": "5"}}],
                 "effort": {"work": 20000}}
                """.formatted(nest)).orThrow();
    }

    private record Painted(BufferedImage image, Rectangle2D box, PlacedPiece piece) {
        /** True if there is ink at a place of the blank, from its origin end and edge in inches, give or take a dot. */
        boolean isInkAt(double along, double across) {
            double inch = 25_400_000.0;
            int x = (int)
                    Math.round(box.getMinX() + along * inch / piece.length().nanometres() * box.getWidth());
            int y = (int)
                    Math.round(box.getMaxY() - across * inch / piece.width().nanometres() * box.getHeight());
            for (int dot = 0; dot < 9; dot++) {
                if ((image.getRGB(x + dot % 3 - 1, y + dot / 3 - 1) & 0xFF) < 0xD0) {
                    return true;
                }
            }
            return false;
        }
    }

    private static Painted paint(Job job) {
        CuttingPlan plan = new Optimizer().plan(job);
        Layout layout = plan.layouts().get(0);
        LayoutDrawing drawing = new LayoutPainter(job).large(layout, 720, 380).drawing();
        BufferedImage image = new BufferedImage(drawing.width(), drawing.height(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
        drawing.paint(graphics);
        graphics.dispose();
        PlacedPiece piece = layout.pieces().get(0);
        Frame frame = Frame.of(layout, Form.BOARD, Medium.page(720, 380, layout, new PrintedLengths(job.writing())));
        return new Painted(image, frame.box(piece.x(), piece.y(), piece.extentX(), piece.extentY()), piece);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1.4, 15.8, 16.4})
    void theSlotRunsFromEndToEnd(double along) {
        Painted painted = paint(job(", \"nest\": true"));
        double line = HIGH + (1.75 - HIGH) * along / 17;
        assertThat(painted.isInkAt(along, line)).isTrue();
        assertThat(painted.isInkAt(along, line + KERF)).isTrue();
        assertThat(painted.isInkAt(along, along < 8 ? 2 : 1)).isFalse();
    }

    @Test
    void eachKeepsItsWidthToWhereTheTaperBegins() {
        Painted painted = paint(job(", \"nest\": true"));
        assertThat(painted.isInkAt(0.7, 3.5)).isTrue();
        double blank = 3.5 + 1.75 + 1.75 * 4.25 / 12.75 + KERF;
        assertThat(painted.isInkAt(16.4, blank - 3.5)).isTrue();
    }

    @Test
    void aBlankForEachHasNone() {
        Painted painted = paint(job(""));
        assertThat(painted.isInkAt(0.7, 2.9)).isFalse();
        assertThat(painted.isInkAt(16.4, 1.75)).isFalse();
    }

    /** Two frame rails turned over: the short edge of the first begins 2 in from its end, the second lies with its long edge at the far edge. */
    @Test
    void mitresAreDrawn() {
        Job job = new JobReader().read("""
                {"material": "ash", "shop": {"kerf": {"crosscut": "1/8", "rip": "1/8"}},
                 "parts": [{"id": "leg", "quantity": 2, "length": "17", "width": "2", "thickness": "3/4",
                            "ends": {"angle": "45", "stick": 2, "flip": true}}],
                 "stock": [{"id": "b", "length": "36", "width": "2", "thickness": "3/4", "price": {"amount": "5"}}],
                 "effort": {"work": 20000}}
                """).orThrow();
        Painted painted = paint(job);
        assertThat(painted.isInkAt(0.5, 0.5)).isTrue();
        assertThat(painted.isInkAt(1.5, 1.5)).isTrue();
        assertThat(painted.isInkAt(15.5, 1.5)).isTrue();
        assertThat(painted.isInkAt(1.5, 0.5)).isFalse();
        // 17 - 2 + 1/8 x root 2, to the next sixty-fourth: the second begins at 15-3/16 on the far edge.
        assertThat(painted.isInkAt(15.1875 + 0.5, 1.5)).isTrue();
        assertThat(painted.isInkAt(15.1875 + 16.5, 1.5)).isTrue();
        assertThat(painted.isInkAt(15.1875 + 16.5, 0.3)).isFalse();
    }

    /** Two gangs are not one of twice as many. */
    @Test
    void equalBoardsNameEachPair() {
        Job job = job(", \"nest\": true");
        Layout layout = new Optimizer().plan(job).layouts().get(0);
        PieceNames names = new PieceNames(job);
        PlacedPiece piece = layout.pieces().get(0);
        PlacedPiece alike = new PlacedPiece(
                piece.part(),
                java.util.List.of(1, 3),
                piece.members(),
                piece.x(),
                piece.y(),
                piece.length(),
                piece.width(),
                piece.turned());
        assertThat(names.mark(alike)).isEqualTo("A1-2,3-4");
        assertThat(names.name(alike)).isEqualTo("leg #1-2, 3-4");
        assertThat(names.isShortened(alike)).isFalse();
    }
}
