package org.stockcutting.http.print.paper;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.stockcutting.http.HandMade;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;

/** Labels are painted, and the codes on them read back from the pixels. */
class LabelPdfTest {

    private static final int DOTS_AN_INCH = 200;

    @Test
    void everyPieceHasALabelWhoseCodeReadsBack() throws Exception {
        Job job = Pages.job("hall-table");
        CuttingPlan plan = Pages.plan(job, "hall-table");
        int pieces = plan.layouts().stream()
                .mapToInt(layout -> layout.repeat() * layout.pieces().size())
                .sum();

        List<String> codes = codes(LabelPdf.labels(job, plan, Paper.LETTER), pieces, Paper.LETTER);

        assertThat(codes).hasSize(pieces).doesNotHaveDuplicates();
        assertThat(codes)
                .allMatch(code -> code.startsWith(job.name()
                                .substring(0, Math.min(24, job.name().length()))
                                .strip() + " | "));
        String text = Pages.text(LabelPdf.labels(job, plan, Paper.LETTER));
        job.parts().forEach(part -> assertThat(text).contains(part.id()));
        assertThat(text).contains("stave 1").contains("glue up, then");
    }

    @Test
    void codesCarryNamesOfAnyScriptAndStartNoFormula() throws Exception {
        Job job = HandMade.job("桌腿 <script>", "\u202E=1+1");
        CuttingPlan plan = HandMade.plan(job);

        assertThat(codes(LabelPdf.labels(job, plan, Paper.A4), 4, Paper.A4))
                .containsExactly(
                        "Hand made | 桌腿 <script> | 1",
                        "Hand made | 桌腿 <script> | 2",
                        "Hand made | \uFFFD=1+1 | 1",
                        "Hand made | \uFFFD=1+1 | 2");
        // OWASP, CSV injection: a scanner types its text into a cell.
        assertThat(Label.code("=cmd", "x", "1")).isEqualTo("'=cmd | x | 1");
        assertThat(Label.code("long".repeat(99), "part".repeat(99), "1")).hasSizeLessThan(70);
    }

    private static List<String> codes(byte[] pdf, int labels, Paper paper) throws Exception {
        List<String> codes = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            int a = LabelPdf.COLUMNS * LabelPdf.ROWS;
            assertThat(document.getNumberOfPages()).isEqualTo((labels + a - 1) / a);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                BufferedImage image = new PDFRenderer(document).renderImageWithDPI(page, DOTS_AN_INCH);
                for (int i = 0; i < Math.min(a, labels - page * a); i++) {
                    codes.add(read(cell(image, i, paper)));
                }
            }
        }
        return codes;
    }

    private static BufferedImage cell(BufferedImage page, int index, Paper paper) {
        double wide = (paper.width() - 72) / LabelPdf.COLUMNS;
        double high = (paper.height() - 72) / LabelPdf.ROWS;
        double scale = DOTS_AN_INCH / 72.0;
        int x = (int) ((36 + index % LabelPdf.COLUMNS * wide) * scale);
        int y = (int) ((36 + index / LabelPdf.COLUMNS * high) * scale);
        return page.getSubimage(x, y, (int) (wide * scale), (int) (high * scale));
    }

    private static String read(BufferedImage image) throws Exception {
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        RGBLuminanceSource source = new RGBLuminanceSource(image.getWidth(), image.getHeight(), pixels);
        return new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(source)))
                .getText();
    }
}
