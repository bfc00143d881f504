package org.stockcutting.http.print.paper;

import de.rototor.pdfbox.graphics2d.IPdfBoxGraphics2DFontTextDrawer;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.TextAttribute;
import java.io.IOException;
import java.text.AttributedCharacterIterator;
import java.text.AttributedString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.stockcutting.draw.LayoutDrawing;

/** Turns a drawing into a form of a PDF document. Its text stays text, in the one typeface of the document. */
final class PictureInk {

    private PictureInk() {}

    static PDFormXObject form(PDDocument document, LayoutDrawing drawing, Face face) throws IOException {
        PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, drawing.width(), drawing.height());
        graphics.setFontTextDrawer(new OneFace(face));
        drawing.paint(graphics);
        graphics.dispose();
        return graphics.getXFormObject();
    }

    /** Draws every text in the same typeface, whatever the drawing asked for. */
    private static final class OneFace extends PdfBoxGraphics2DFontTextDrawer {
        private final Face face;

        OneFace(Face face) {
            this.face = face;
        }

        @Override
        public boolean canDrawText(
                AttributedCharacterIterator text, IPdfBoxGraphics2DFontTextDrawer.IFontTextDrawerEnv env) {
            return true;
        }

        @Override
        public void drawText(AttributedCharacterIterator text, IPdfBoxGraphics2DFontTextDrawer.IFontTextDrawerEnv env)
                throws IOException, FontFormatException {
            StringBuilder plain = new StringBuilder();
            for (char c = text.first(); c != AttributedCharacterIterator.DONE; c = text.next()) {
                plain.append(c);
            }
            // The mark that keeps text in order is for readers that order it themselves; here it is in order already.
            String shown = face.shown(plain.toString().replace("\u200E", ""));
            if (!shown.isEmpty()) {
                AttributedString one = new AttributedString(shown);
                one.addAttribute(TextAttribute.FONT, env.getFont());
                super.drawText(one.getIterator(), env);
            }
        }

        @Override
        protected PDFont mapFont(Font font, IPdfBoxGraphics2DFontTextDrawer.IFontTextDrawerEnv env) {
            return face.font();
        }
    }
}
