package org.stockcutting.http.print;

import java.awt.Dimension;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.dom.GenericDOMImplementation;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.stockcutting.draw.LayoutDrawing;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Prints a drawing as an SVG document. Every text goes through an XML serializer, which escapes it: a part's name cannot add markup. */
public final class SvgPrinter {

    private static final String SVG = "http://www.w3.org/2000/svg";

    private SvgPrinter() {}

    /** The document in UTF-8. */
    public static byte[] print(LayoutDrawing drawing) {
        Document document = GenericDOMImplementation.getDOMImplementation().createDocument(SVG, "svg", null);
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment("A board and where to cut it");
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(new Dimension(drawing.width(), drawing.height()));
        drawing.paint(graphics);
        Element root = graphics.getRoot();
        root.setAttributeNS(null, "viewBox", "0 0 " + drawing.width() + " " + drawing.height());
        return written(root);
    }

    /** Written by the JDK's serializer: Batik's own names a document type at a remote address, which a reader might fetch. */
    static byte[] written(Element root) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            Transformer transformer = TransformerFactory.newDefaultInstance().newTransformer();
            transformer.setOutputProperty(OutputKeys.ENCODING, StandardCharsets.UTF_8.name());
            transformer.setOutputProperty(OutputKeys.STANDALONE, "yes");
            transformer.transform(new DOMSource(root), new StreamResult(bytes));
        } catch (TransformerException e) {
            throw new IllegalStateException("a drawing could not be written to memory", e);
        }
        return bytes.toByteArray();
    }
}
