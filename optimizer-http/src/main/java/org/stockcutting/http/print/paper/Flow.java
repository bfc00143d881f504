package org.stockcutting.http.print.paper;

/** Text that runs down a page and over to the next. */
final class Flow implements AutoCloseable {

    static final double BODY = 11;
    static final double LEADING = 1.28;

    private static final double FOOT = 44;

    private final PdfFile file;
    private final double pageWidth;
    private final double pageHeight;
    private PdfSheet sheet;
    private double y = PdfFile.MARGIN;

    Flow(PdfFile file, double pageWidth, double pageHeight) {
        this.file = file;
        this.pageWidth = pageWidth;
        this.pageHeight = pageHeight;
        sheet = file.sheet(pageWidth, pageHeight);
    }

    Face face() {
        return file.face();
    }

    PdfSheet sheet() {
        return sheet;
    }

    double left() {
        return PdfFile.MARGIN;
    }

    double width() {
        return pageWidth - 2 * PdfFile.MARGIN;
    }

    /** Top of what is still empty. */
    double y() {
        return y;
    }

    /** Height of what is still empty. */
    double room() {
        return pageHeight - FOOT - y;
    }

    void gap(double high) {
        y += high;
    }

    /** Goes on to a new page if less than a height is left, and says whether it did. */
    boolean keep(double high) {
        if (high <= room() || y <= PdfFile.MARGIN) {
            return false;
        }
        page();
        return true;
    }

    /** Goes on to a new page. */
    void page() {
        sheet.close();
        sheet = file.sheet(pageWidth, pageHeight);
        y = PdfFile.MARGIN;
    }

    void title(String text) {
        for (String line : face().wrapped(text, 20, width())) {
            keep(20 * LEADING);
            line(line, 0, 20);
        }
        gap(4);
    }

    void heading(String text) {
        keep(96);
        gap(8);
        for (String line : face().wrapped(text, 14, width())) {
            line(line, 0, 14);
        }
        rule(1.2);
    }

    void paragraph(String text) {
        paragraph(text, BODY, 0);
    }

    /** A paragraph whose lines after the first are indented. */
    void paragraph(String text, double size, double indent) {
        boolean first = true;
        for (String line : face().wrapped(text, size, width() - indent)) {
            keep(size * LEADING);
            line(line, first ? 0 : indent, size);
            first = false;
        }
    }

    void line(String text, double indent, double size) {
        y += size * LEADING;
        sheet.text(text, left() + indent, y - size * 0.25, size);
    }

    void rule(double weight) {
        sheet.line(left(), y + 1, left() + width(), y + 1, weight);
        y += 3;
    }

    void table(Table table) {
        table(table, BODY);
    }

    void table(Table table, double size) {
        new TableSetter(table, size, this).set();
    }

    @Override
    public void close() {
        sheet.close();
    }
}
