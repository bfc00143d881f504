package org.stockcutting.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.length.Length;
import org.stockcutting.plan.Layout;

/** Pictures for pages: long narrow boards, short wide ones, many small pieces. */
class PagePictureTest {

    @ParameterizedTest
    @CsvSource({"96, 3.5, 20, 4", "192, 1.5, 3, 55", "24, 23.5, 10, 2", "144, 11.25, 40, 3"})
    void staysWithinItsPlaceAndIsDrawnWideEnoughToRead(String length, String width, String piece, int count) {
        Layout layout = layout(length, width, piece, count);
        Job job = job(length, width);
        PagePicture large = new LayoutPainter(job).large(layout, 720, 380);
        PagePicture small = new LayoutPainter(job).small(layout, 540, 90);

        for (PagePicture picture : List.of(large, small)) {
            assertThat(picture.drawing().height()).isLessThanOrEqualTo(picture == large ? 380 : 90);
            assertNothingOutside(picture.drawing());
        }
        Frame frame = Frame.of(
                layout,
                org.stockcutting.stock.Form.BOARD,
                Medium.page(720, 380, layout, new PrintedLengths(job.writing())));
        assertThat(frame.bottom() - frame.top()).isGreaterThanOrEqualTo(100);
    }

    @Test
    void saysWhetherEveryPieceCarriesItsSize() {
        Job job = job("96", "3.5");

        assertThat(new LayoutPainter(job)
                        .large(layout("96", "3.5", "20", 4), 720, 380)
                        .complete())
                .isTrue();
        assertThat(new LayoutPainter(job)
                        .large(layout("96", "3.5", "0.25", 60), 720, 380)
                        .complete())
                .isFalse();
    }

    private static void assertNothingOutside(LayoutDrawing drawing) {
        int rim = 40;
        BufferedImage image =
                new BufferedImage(drawing.width() + 2 * rim, drawing.height() + 2 * rim, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(java.awt.Color.WHITE);
        graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
        graphics.translate(rim, rim);
        drawing.paint(graphics);
        graphics.dispose();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                boolean inside = x >= rim && x < rim + drawing.width() && y >= rim && y < rim + drawing.height();
                assertThat(inside || (image.getRGB(x, y) & 0xFF) == 0xFF)
                        .as("ink at %d, %d outside of %d x %d", x - rim, y - rim, drawing.width(), drawing.height())
                        .isTrue();
            }
        }
    }

    private static Layout layout(String length, String width, String piece, int count) {
        return Drawn.row(
                Length.inches(length),
                Length.inches(width),
                IntStream.range(0, count).mapToObj(i -> Length.inches(piece)).toList(),
                false);
    }

    private static Job job(String length, String width) {
        return Drawn.withPart(
                Drawn.job(org.stockcutting.stock.Form.BOARD, Length.inches(length), Length.inches(width), List.of()),
                JobBuilder.inches("part")
                        .material("ash")
                        .part("stick", 99, "20", "2x4")
                        .board("b", "2x4", "8'", "3")
                        .build());
    }
}
