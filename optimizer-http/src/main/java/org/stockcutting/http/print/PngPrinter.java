package org.stockcutting.http.print;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.stockcutting.draw.LayoutDrawing;

/** Prints a drawing as a PNG picture in grey. Letters come from the machine's own fonts. */
public final class PngPrinter {

    private static final int SCALE = 2;

    private PngPrinter() {}

    /** The picture, two pixels a unit, so that it stays sharp on paper. */
    public static byte[] print(LayoutDrawing drawing) {
        BufferedImage image =
                new BufferedImage(drawing.width() * SCALE, drawing.height() * SCALE, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.scale(SCALE, SCALE);
        drawing.paint(graphics);
        graphics.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            if (!ImageIO.write(image, "png", out)) {
                throw new IllegalStateException("this Java has no writer for PNG");
            }
        } catch (IOException e) {
            throw new IllegalStateException("a picture could not be written to memory", e);
        }
        return bytes.toByteArray();
    }
}
