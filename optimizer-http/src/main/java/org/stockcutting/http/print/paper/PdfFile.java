package org.stockcutting.http.print.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** A PDF document under way. It holds no clock value and no random id: the same prints give the same bytes. */
final class PdfFile implements AutoCloseable {

    static final double MARGIN = 36;

    private static final double FOOTER = 9;

    private final PDDocument document = new PDDocument();
    private final Face face;
    private final String name;
    private final List<PDPage> pages = new ArrayList<>();

    /**
     * An empty document.
     *
     * @param name stands at the foot of every page and in the title of the document
     */
    PdfFile(String name) {
        this.name = name;
        try {
            face = new Face(document);
        } catch (IOException e) {
            throw new UncheckedIOException("the typeface of the prints cannot be read", e);
        }
        document.setDocumentId((long) name.hashCode());
        document.getDocumentInformation().setTitle(name);
    }

    Face face() {
        return face;
    }

    /** A new page at the end. */
    PdfSheet sheet(double width, double height) {
        PDPage page = new PDPage(new PDRectangle((float) width, (float) height));
        document.addPage(page);
        pages.add(page);
        return new PdfSheet(document, page, face);
    }

    /** The finished document; nothing can be added after it. */
    byte[] bytes(boolean footers) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            for (int i = 0; footers && i < pages.size(); i++) {
                footer(pages.get(i), "page " + (i + 1) + " of " + pages.size());
            }
            document.save(out);
        } catch (IOException e) {
            throw new UncheckedIOException("a document could not be written to memory", e);
        }
        return out.toByteArray();
    }

    @Override
    public void close() {
        try {
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException("a document in memory could not be closed", e);
        }
    }

    private void footer(PDPage page, String number) throws IOException {
        double width = page.getMediaBox().getWidth();
        double numberWidth = face.width(number, FOOTER);
        String left = face.clipped(name, FOOTER, width - 2 * MARGIN - numberWidth - 20);
        try (PDPageContentStream ink =
                new PDPageContentStream(document, page, PDPageContentStream.AppendMode.APPEND, true, true)) {
            write(ink, left, MARGIN);
            write(ink, number, width - MARGIN - numberWidth);
        }
    }

    private void write(PDPageContentStream ink, String text, double x) throws IOException {
        ink.beginText();
        ink.setFont(face.font(), (float) FOOTER);
        ink.newLineAtOffset((float) x, 20);
        ink.showText(face.shown(text));
        ink.endText();
    }
}
