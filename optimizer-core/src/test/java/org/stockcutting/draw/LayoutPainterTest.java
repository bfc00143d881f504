package org.stockcutting.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Zone;

class LayoutPainterTest {

    private static final int WHITE = 0xFFFFFF;
    private static final int BLACK = 0x000000;

    @Test
    void theOriginEndIsAHeavyLineAndTheTrimIsGrey() {
        Length length = Length.inches("24");
        Length width = Length.inches("3.5");
        Job job = Drawn.job(Form.BOARD, length, width, List.of());
        BufferedImage image = paint(job, Drawn.row(length, width, List.of(Length.inches("10")), true));
        Frame frame = Frame.of(Drawn.row(length, width, List.of(), true), Form.BOARD, Medium.SCREEN);
        int middle = (int) ((frame.top() + frame.bottom()) / 2);

        assertThat(grey(image, 83, middle)).isEqualTo(BLACK);
        assertThat(grey(image, 84, middle)).isEqualTo(BLACK);
        assertThat(grey(image, (int) frame.x(Length.inches("0.25")), middle)).isEqualTo(0xC8C8C8);
        assertThat(grey(image, (int) frame.x(Length.inches("1")), middle)).isEqualTo(WHITE);
    }

    @Test
    void badWoodIsHatched() {
        Length length = Length.inches("96");
        Length width = Length.inches("5.5");
        Zone knot = new Zone(
                Length.inches("60"), Length.inches("70"), null, null, Zone.Severity.UNUSABLE, Zone.Face.BOTH, false);
        Layout layout = Drawn.row(length, width, List.of(Length.inches("50")), false);

        long without = dark(paint(Drawn.job(Form.BOARD, length, width, List.of()), layout));
        long with = dark(paint(Drawn.job(Form.BOARD, length, width, List.of(knot)), layout));

        assertThat(with).isGreaterThan(without + 500);
    }

    @Test
    void aThinBoardIsStretchedUntilTextFitsAndSaysSo() {
        Length length = Length.inches("144");
        Length width = Length.inches("1.5");
        Layout layout = Drawn.row(length, width, List.of(Length.inches("40")), true);
        Frame frame = Frame.of(layout, Form.BOARD, Medium.SCREEN);

        assertThat(frame.isToScale()).isFalse();
        assertThat(frame.bottom() - frame.top()).isGreaterThan(2 * Pen.lineHeight(Pen.LARGE));
        assertThat(Frame.of(layout, Form.SHEET, Medium.SCREEN).isToScale()).isTrue();
    }

    @Test
    void nothingReachesTheRimOfThePaper() {
        for (int seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            Length length = Length.ofNanometres(396_875L * (640 + random.nextInt(12_000)));
            Length width = Length.ofNanometres(396_875L * (32 + random.nextInt(3_000)));
            List<Length> pieces = new ArrayList<>();
            Length used = Length.inches("0.5");
            while (true) {
                Length piece = Length.ofNanometres(396_875L * (8 + random.nextInt(seed % 2 == 0 ? 200 : 3_000)));
                used = used.plus(piece).plus(Drawn.KERF);
                if (!used.isLessThan(length)) {
                    break;
                }
                pieces.add(piece);
            }
            Form form = random.nextBoolean() ? Form.BOARD : Form.SHEET;
            BufferedImage image = paint(
                    Drawn.job(form, length, width, List.of()), Drawn.row(length, width, pieces, random.nextBoolean()));
            for (int x = 0; x < image.getWidth(); x++) {
                assertThat(grey(image, x, 2)).as("seed %d top", seed).isEqualTo(WHITE);
                assertThat(grey(image, x, image.getHeight() - 3))
                        .as("seed %d bottom", seed)
                        .isEqualTo(WHITE);
            }
            for (int y = 0; y < image.getHeight(); y++) {
                assertThat(grey(image, 2, y)).as("seed %d left", seed).isEqualTo(WHITE);
                assertThat(grey(image, image.getWidth() - 3, y))
                        .as("seed %d right", seed)
                        .isEqualTo(WHITE);
            }
        }
    }

    /** The estimate of text widths must be wide enough for the face that is drawn here, or labels would run over. */
    @Test
    void textNeedsNoMoreRoomThanEstimated() {
        Graphics2D graphics = new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB).createGraphics();
        for (String text : List.of(
                "apron #1-3  16-1/4 x 3-1/2",
                "KEEP 0123456789",
                "~37-11/16, ~38-7/8",
                "top #2 stave 3",
                "Möbelstück #4")) {
            for (int size : new int[] {Pen.LARGE, Pen.SMALL, Pen.TINY}) {
                graphics.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, size));
                double measured = graphics.getFontMetrics().stringWidth(text);
                assertThat(Pen.width(text, size)).as("%s at %d", text, size).isGreaterThan(measured * 0.97);
            }
        }
        graphics.dispose();
    }

    private static BufferedImage paint(Job job, Layout layout) {
        LayoutDrawing drawing = new LayoutPainter(job).drawing(layout, 1);
        BufferedImage image = new BufferedImage(drawing.width(), drawing.height(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
        drawing.paint(graphics);
        graphics.dispose();
        return image;
    }

    private static int grey(BufferedImage image, int x, int y) {
        return image.getRGB(x, y) & WHITE;
    }

    private static long dark(BufferedImage image) {
        long count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (grey(image, x, y) & 0xFF) < 0x90 ? 1 : 0;
            }
        }
        return count;
    }
}
