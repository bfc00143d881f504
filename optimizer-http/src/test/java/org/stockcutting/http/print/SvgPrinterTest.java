package org.stockcutting.http.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.http.HandMade;
import org.stockcutting.job.Job;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class SvgPrinterTest {

    private final Job job = HandMade.job();
    private final byte[] svg = SvgPrinter.print(
            new LayoutPainter(job).drawing(HandMade.plan(job).layouts().get(0), 1));

    @Test
    void isSvgThatSaysWhatIsCutWhere() throws Exception {
        Document document = parsed();

        assertThat(document.getDocumentElement().getLocalName()).isEqualTo("svg");
        assertThat(document.getDocumentElement().getAttribute("viewBox")).startsWith("0 0 1060 ");
        assertThat(texts(document))
                .contains("@plank #1 to #2: cut 2 alike")
                .contains("1/2", "60-1/2", "90-5/8")
                .anyMatch(text -> text.contains("=1+1 #1, 2"));
    }

    @Test
    void aNameCannotAddMarkup() throws Exception {
        Document document = parsed();

        assertThat(document.getElementsByTagNameNS("*", "script").getLength()).isZero();
        assertThat(new String(svg, StandardCharsets.UTF_8)).doesNotContain("<script");
        assertThat(texts(document)).anyMatch(text -> text.contains(HandMade.SCRIPT));
    }

    @Test
    void nothingIsFetchedAndNothingHasColour() {
        String text = new String(svg, StandardCharsets.UTF_8);

        assertThat(text)
                .doesNotContain("<!DOCTYPE")
                .doesNotContain("href=\"http")
                .doesNotContain("<image");
        for (String rgb : text.split("rgb\\(", -1)) {
            if (rgb.matches("(?s)[0-9]+,[0-9]+,[0-9]+\\).*")) {
                String[] parts = rgb.substring(0, rgb.indexOf(')')).split(",");
                assertThat(parts[0]).isEqualTo(parts[1]).isEqualTo(parts[2]);
            }
        }
    }

    @Test
    void theSameLayoutGivesTheSameBytes() {
        assertThat(SvgPrinter.print(new LayoutPainter(job)
                        .drawing(HandMade.plan(job).layouts().get(0), 1)))
                .isEqualTo(svg);
    }

    private Document parsed() throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
    }

    private static List<String> texts(Document document) {
        NodeList nodes = document.getElementsByTagNameNS("*", "text");
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(((Element) nodes.item(i)).getTextContent());
        }
        return texts;
    }
}
