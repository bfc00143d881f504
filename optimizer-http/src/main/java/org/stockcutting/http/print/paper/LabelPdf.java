package org.stockcutting.http.print.paper;

import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;

/**
 * Sheets of labels, one for each rough piece: mark, part, number, size, what comes next, and a QR code of job, part and number. Three
 * columns and seven rows inside a margin of half an inch, to be cut apart along thin lines or printed on whole sheets that stick.
 */
public final class LabelPdf {

    static final int COLUMNS = 3;
    static final int ROWS = 7;

    private static final double PAD = 7;
    private static final double CODE = 76;
    private static final double TEXT = 10;
    private static final double SMALL = 9;
    /** What is done next may be longer than the label is wide: smaller letters first, then dots. */
    private static final double LEAST = 7.5;

    private LabelPdf() {}

    /** All labels of a plan. */
    public static byte[] labels(Job job, CuttingPlan plan, Paper paper) {
        List<Label> labels = new LabelMaker(job).labels(plan);
        try (PdfFile file = new PdfFile("Labels: " + job.name())) {
            int a = COLUMNS * ROWS;
            for (int from = 0; from == 0 || from < labels.size(); from += a) {
                page(labels.subList(from, Math.min(labels.size(), from + a)), file, paper);
            }
            return file.bytes(false);
        }
    }

    private static void page(List<Label> labels, PdfFile file, Paper paper) {
        double wide = (paper.width() - 2 * PdfFile.MARGIN) / COLUMNS;
        double high = (paper.height() - 2 * PdfFile.MARGIN) / ROWS;
        try (PdfSheet sheet = file.sheet(paper.width(), paper.height())) {
            for (int i = 0; i < labels.size(); i++) {
                double x = PdfFile.MARGIN + (i % COLUMNS) * wide;
                double top = PdfFile.MARGIN + (i / COLUMNS) * high;
                sheet.frame(x, top, wide, high, 0.25);
                print(labels.get(i), sheet, file.face(), x, top, wide, high);
            }
        }
    }

    private static void print(Label label, PdfSheet sheet, Face face, double x, double top, double wide, double high) {
        double left = x + PAD;
        double beside = wide - CODE - PAD;
        double full = wide - 2 * PAD;
        QrCode.draw(label.code(), sheet, x + wide - CODE, top, CODE);
        sheet.text(face.clipped(label.mark(), 24, beside), left, top + 27, 24);
        sheet.text(face.clipped(label.part(), 13, beside), left, top + 44, 13);
        sheet.text(face.clipped(label.number(), 13, beside), left, top + 59, 13);
        sheet.text(face.clipped("from " + label.board(), SMALL, beside), left, top + 71, SMALL);
        sheet.text(face.clipped(label.size(), 12, full), left, top + high - PAD - 13, 12);
        double next = TEXT;
        while (next > LEAST && face.width(label.next(), next) > full) {
            next -= 0.5;
        }
        sheet.text(face.clipped(label.next(), next, full), left, top + high - PAD, next);
    }
}
