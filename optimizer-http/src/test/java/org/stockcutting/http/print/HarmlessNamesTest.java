package org.stockcutting.http.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.http.HandMade;
import org.stockcutting.http.print.paper.LabelPdf;
import org.stockcutting.http.print.paper.Paper;
import org.stockcutting.http.print.paper.PlanPdf;
import org.stockcutting.io.CsvTables;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.w3c.dom.Document;

/** Names that mean something to a browser, a spreadsheet, a PDF reader or the order of letters mean nothing on what is printed. */
class HarmlessNamesTest {

    private static final String DIRECTION_MARKS =
            "\u061C\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "]]><svg onload=alert(1)>",
                "=1+1",
                "+1",
                "-1",
                "@SUM(A1)",
                "\"",
                "a\",=1+1",
                "a\u202E31 x 41\u202C",
                "\u2067leg\u2069",
                "(unbalanced \\( paren",
                "/JavaScript (app.alert\\(1\\))",
                "\uD800half",
                "שולחן",
                "e\u0301\u0301\u0301\u0301"
            })
    void aNameIsOnlyAName(String name) throws Exception {
        Job job = HandMade.job(name, "rail");
        CuttingPlan plan = HandMade.plan(job);

        svg(SvgPrinter.print(new LayoutPainter(job).drawing(plan.layouts().get(0), 1)));
        pdf(PlanPdf.plan(job, plan, Paper.LETTER), "rail");
        pdf(LabelPdf.labels(job, plan, Paper.A4), "rail");
        for (String table : List.of(
                CsvTables.pieces(job, plan), CsvTables.cutSequence(job, plan), CsvTables.buyingList(job, plan))) {
            csv(table);
        }
        assertThat(new PlanText(job).print(plan)).doesNotContainPattern("[" + DIRECTION_MARKS + "]");
    }

    private static void svg(byte[] svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
        assertThat(document.getElementsByTagNameNS("*", "script").getLength()).isZero();
        String text = new String(svg, StandardCharsets.UTF_8);
        assertThat(text).doesNotContain(" onload=alert(1)>").doesNotContain("<script");
        // Of the marks that turn the direction of writing, only the one that this project sets behind a name may
        // remain.
        assertThat(text).doesNotContainPattern("[" + DIRECTION_MARKS.replace("\u200E", "") + "]");
    }

    private static void pdf(byte[] pdf, String expected) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document);
            assertThat(text).contains(expected).doesNotContainPattern("[" + DIRECTION_MARKS + "]");
            assertThat(document.getDocumentCatalog().getOpenAction()).isNull();
            assertThat(document.getDocumentCatalog().getCOSObject().containsKey(COSName.AA))
                    .isFalse();
            assertThat(document.getDocumentCatalog().getNames()).isNull();
            for (var page : document.getPages()) {
                assertThat(page.getAnnotations()).isEmpty();
            }
        }
    }

    /** No cell begins like a formula (OWASP, "CSV Injection"), read by the rules of RFC 4180; every row has as many cells. */
    private static void csv(String table) {
        List<List<String>> rows = Rfc4180.rows(table);
        assertThat(rows).hasSizeGreaterThan(1);
        for (List<String> row : rows) {
            assertThat(row).hasSameSizeAs(rows.get(0));
            assertThat(row).noneMatch(cell -> !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0);
        }
    }
}
