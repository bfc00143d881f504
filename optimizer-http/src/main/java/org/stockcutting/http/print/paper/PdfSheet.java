package org.stockcutting.http.print.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;
import org.stockcutting.draw.LayoutDrawing;

/** One page. Places are counted from its top left corner, in points. */
final class PdfSheet implements AutoCloseable {

    /** Side of a box to tick. */
    static final double TICK = 9;

    private final PDDocument document;
    private final Face face;
    private final double width;
    private final double height;
    private final PDPageContentStream ink;

    /** What can go wrong while drawing to memory. */
    private interface Strokes {
        void make() throws IOException;
    }

    PdfSheet(PDDocument document, PDPage page, Face face) {
        this.document = document;
        this.face = face;
        width = page.getMediaBox().getWidth();
        height = page.getMediaBox().getHeight();
        try {
            ink = new PDPageContentStream(document, page);
        } catch (IOException e) {
            throw new UncheckedIOException("a page in memory could not be opened", e);
        }
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }

    void text(String text, double x, double baseline, double size) {
        shown(face.shown(text), x, baseline, size);
    }

    /** Text that ends at a place. */
    void textRight(String text, double right, double baseline, double size) {
        String shown = face.shown(text);
        shown(shown, right - face.widthOfShown(shown, size), baseline, size);
    }

    void line(double x1, double y1, double x2, double y2, double weight) {
        draw(() -> {
            ink.setLineWidth((float) weight);
            ink.moveTo((float) x1, (float) (height - y1));
            ink.lineTo((float) x2, (float) (height - y2));
            ink.stroke();
        });
    }

    /** A box to tick whose lower edge stands on a baseline. */
    void tick(double x, double baseline) {
        draw(() -> {
            ink.setLineWidth(0.9f);
            ink.addRect((float) x, (float) (height - baseline), (float) TICK, (float) TICK);
            ink.stroke();
        });
    }

    void frame(double x, double top, double wide, double high, double weight) {
        draw(() -> {
            ink.setLineWidth((float) weight);
            ink.addRect((float) x, (float) (height - top - high), (float) wide, (float) high);
            ink.stroke();
        });
    }

    /** A rectangle filled with a grey, 0 black to 1 white. */
    void fill(double x, double top, double wide, double high, double grey) {
        draw(() -> {
            ink.setNonStrokingColor((float) grey);
            ink.addRect((float) x, (float) (height - top - high), (float) wide, (float) high);
            ink.fill();
            ink.setNonStrokingColor(0f);
        });
    }

    /** A drawing with its top left corner at a place. */
    void picture(LayoutDrawing drawing, double x, double top) {
        draw(() -> {
            ink.saveGraphicsState();
            ink.transform(Matrix.getTranslateInstance((float) x, (float) (height - top - drawing.height())));
            ink.drawForm(PictureInk.form(document, drawing, face));
            ink.restoreGraphicsState();
        });
    }

    @Override
    public void close() {
        draw(ink::close);
    }

    private void shown(String shown, double x, double baseline, double size) {
        draw(() -> {
            ink.beginText();
            ink.setFont(face.font(), (float) size);
            ink.newLineAtOffset((float) x, (float) (height - baseline));
            ink.showText(shown);
            ink.endText();
        });
    }

    private static void draw(Strokes strokes) {
        try {
            strokes.make();
        } catch (IOException e) {
            throw new UncheckedIOException("a page in memory could not be written", e);
        }
    }
}
