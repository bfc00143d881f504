package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.draw.PagePicture;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.http.print.BoardGroup;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.report.ChalkMarks;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;

/** Six boards a page with the mark to chalk on each piece; sheets stand in two columns. What the marks mean stands at the foot. */
final class CompactPages {

    private static final int A_PAGE = 6;
    private static final double TITLE = 11;
    private static final double KEY = 9.5;
    private static final double KEY_ROOM = 52;
    private static final double GAP = 12;

    private final Job job;
    private final LayoutPainter painter;
    private final ChalkMarks marks;
    private final Set<String> sheets;
    private final Map<String, String> parts = new LinkedHashMap<>();

    CompactPages(Job job) {
        this.job = job;
        painter = new LayoutPainter(job);
        marks = new ChalkMarks(job);
        sheets = java.util.stream.Stream.<StockItem>concat(job.forSale().stream(), job.onHand().stream())
                .filter(item -> item.form() == Form.SHEET)
                .map(StockItem::id)
                .collect(Collectors.toSet());
        FinishedSizes sizes = new FinishedSizes(job, new PrintedLengths(job.writing()));
        for (Part part : job.parts()) {
            parts.put(part.id(), marks.of(part.id()) + " = " + part.id() + ", " + sizes.size(part));
        }
    }

    void print(List<BoardGroup> groups, PdfFile file, Paper paper) {
        List<BoardGroup> boards = groups.stream().filter(g -> !isSheet(g)).toList();
        List<BoardGroup> panels = groups.stream().filter(this::isSheet).toList();
        pages(boards, 1, file, paper);
        pages(panels, 2, file, paper);
    }

    private void pages(List<BoardGroup> groups, int columns, PdfFile file, Paper paper) {
        for (int from = 0; from < groups.size(); from += A_PAGE) {
            page(groups.subList(from, Math.min(groups.size(), from + A_PAGE)), columns, file, paper);
        }
    }

    private void page(List<BoardGroup> groups, int columns, PdfFile file, Paper paper) {
        double top = PdfFile.MARGIN + 20;
        double wide = (paper.width() - 2 * PdfFile.MARGIN - (columns - 1) * GAP) / columns;
        double high = (paper.height() - top - KEY_ROOM - 40) / (A_PAGE / columns);
        try (PdfSheet sheet = file.sheet(paper.width(), paper.height())) {
            sheet.text(
                    "Marks to chalk on the pieces. Readings run from the heavy lines.", PdfFile.MARGIN, top - 8, TITLE);
            for (int i = 0; i < groups.size(); i++) {
                double x = PdfFile.MARGIN + (i % columns) * (wide + GAP);
                cell(groups.get(i), sheet, file.face(), x, top + (i / columns) * high, wide, high);
            }
            key(groups, sheet, file.face(), paper.height() - KEY_ROOM - 36, paper.width() - 2 * PdfFile.MARGIN);
        }
    }

    private void cell(BoardGroup group, PdfSheet sheet, Face face, double x, double top, double wide, double high) {
        sheet.line(x, top + 1, x + wide, top + 1, 0.4);
        double base = top + TITLE + 4;
        int copies = group.layout().repeat();
        int ticks = Math.min(copies, 8);
        double right = x + wide - ticks * (PdfSheet.TICK + 3);
        for (int i = 0; i < ticks; i++) {
            sheet.tick(right + i * (PdfSheet.TICK + 3) + 3, base);
        }
        String title = group.title() + "   " + painter.boardText(group.layout());
        sheet.text(face.clipped(title, TITLE, right - x - 4), x, base, TITLE);
        double room = high - TITLE - 8;
        PagePicture picture = painter.small(group.layout(), wide, room);
        if (!said(picture).isEmpty()) {
            picture = painter.small(group.layout(), wide, room - KEY * Flow.LEADING);
            String notes = String.join(" ", said(picture));
            sheet.text(face.clipped(notes, KEY, wide), x, top + high - 4, KEY);
        }
        sheet.picture(picture.drawing(), x, base + 2);
    }

    /** Nothing here is to scale; that need not be said of each. What is not shown is said in one sentence. */
    private static List<String> said(PagePicture picture) {
        List<String> hidden = new ArrayList<>();
        List<String> said = new ArrayList<>();
        for (String note : picture.notes()) {
            if (note.startsWith(LayoutPainter.NOT_SHOWN)) {
                hidden.add(note.substring(LayoutPainter.NOT_SHOWN.length(), note.length() - 1));
            } else if (!note.equals(LayoutPainter.NOT_TO_SCALE)) {
                said.add(note);
            }
        }
        if (!hidden.isEmpty()) {
            said.add(LayoutPainter.NOT_SHOWN + String.join("; ", hidden) + ".");
        }
        return said;
    }

    private void key(List<BoardGroup> groups, PdfSheet sheet, Face face, double top, double wide) {
        List<String> used = new ArrayList<>();
        Set<String> ids = groups.stream()
                .flatMap(group -> group.layout().pieces().stream())
                .map(PlacedPiece::part)
                .collect(Collectors.toSet());
        for (Part part : job.parts()) {
            if (ids.contains(part.id())) {
                used.add(parts.getOrDefault(part.id(), ""));
            }
        }
        sheet.line(PdfFile.MARGIN, top, PdfFile.MARGIN + wide, top, 0.8);
        List<String> lines = face.wrapped(String.join(";  ", used), KEY, wide);
        double step = KEY * Flow.LEADING;
        int most = (int) ((KEY_ROOM - 4) / step);
        for (int i = 0; i < Math.min(lines.size(), most); i++) {
            boolean cut = i + 1 == most && lines.size() > most;
            String line = cut ? "More marks stand in the list of parts." : lines.get(i);
            sheet.text(line, PdfFile.MARGIN, top + (i + 1) * step, KEY);
        }
    }

    private boolean isSheet(BoardGroup group) {
        return sheets.contains(group.layout().stock());
    }
}
