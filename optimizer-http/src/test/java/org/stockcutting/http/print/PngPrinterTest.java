package org.stockcutting.http.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.stockcutting.draw.LayoutDrawing;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.http.HandMade;
import org.stockcutting.job.Job;

class PngPrinterTest {

    @Test
    void isTheSameDrawingTwiceAsFine() throws Exception {
        Job job = HandMade.job();
        LayoutDrawing drawing =
                new LayoutPainter(job).drawing(HandMade.plan(job).layouts().get(0), 1);

        BufferedImage image = ImageIO.read(new ByteArrayInputStream(PngPrinter.print(drawing)));

        assertThat(image.getWidth()).isEqualTo(2 * drawing.width());
        assertThat(image.getHeight()).isEqualTo(2 * drawing.height());
        assertThat(image.getRGB(3, 3) & 0xFF).isEqualTo(0xFF);
        // The origin end is a heavy line, 84 units from the left.
        assertThat(image.getRGB(2 * 84, 2 * 100) & 0xFF).isZero();
    }
}
