package org.stockcutting.http.print.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.http.HandMade;
import org.stockcutting.http.print.BoardGroup;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.report.ChalkMarks;

class PlanPdfTest {

    /** Read back from the pages: every board with a page of its own, every piece with a box to tick there, every step. */
    @ParameterizedTest
    @ValueSource(strings = {"tool-cabinet", "wardrobe-metric", "knotty-boards", "hall-table", "picture-frames"})
    void everyBoardPartNumberAndStepIsOnPaper(String name) throws IOException {
        Job job = Pages.job(name);
        CuttingPlan plan = Pages.plan(job, name);
        ChalkMarks marks = new ChalkMarks(job);

        try (PDDocument document = Loader.loadPDF(PlanPdf.plan(job, plan, Paper.of(job)))) {
            Map<String, String> pages = lyingPagesByTitle(document);
            for (BoardGroup group : BoardGroup.of(plan)) {
                String page = pages.get(title(group));
                assertThat(page).as("page of %s", title(group)).isNotNull();
                for (int copy = 0; copy < group.layout().repeat(); copy++) {
                    for (PlacedPiece piece : group.layout().pieces()) {
                        int member =
                                piece.members().isEmpty() ? 0 : piece.members().get(copy);
                        String mark = marks.of(piece.part(), piece.numbers().get(copy), member);
                        assertThat(page).containsPattern("(^|\\s)" + Pattern.quote(mark) + "(\\s|$)");
                    }
                }
            }
            String all = Pages.text(PlanPdf.plan(job, plan, Paper.of(job)));
            for (Part part : job.parts()) {
                assertThat(all).contains(part.id()).contains(marks.of(part.id()) + " = ");
            }
            for (BuyingLine line : plan.derived().buyingList()) {
                assertThat(all).contains(line.stock());
            }
            Map<Integer, String> rows = stepRows(all);
            for (SequenceStep step : plan.derived().cutSequence()) {
                String row = rows.get(step.step());
                assertThat(row).as("step %d", step.step()).isNotNull();
                // Where many pieces that are free of their boards get the same work, one row tells it.
                boolean alone = row.startsWith(step.step() + " ");
                assertThat(alone || step.cut() == null || step.cut().to() == null)
                        .as(row)
                        .isTrue();
                assertThat(row).contains(alone && step.board() != null ? step.board() + " " : "");
            }
            assertThat(all).contains("page 1 of " + document.getNumberOfPages());
        }
    }

    /** Rows of the cut sequence by the steps that they tell; no step stands in two. */
    private static Map<Integer, String> stepRows(String text) {
        Map<Integer, String> rows = new HashMap<>();
        Matcher row = Pattern.compile(
                        "(?m)^(\\d+)(?:-(\\d+))? .*\\b(trim|crosscut|rip|joint|plane|rest|glue|mark|bore|taper)\\b.*$")
                .matcher(text.substring(text.indexOf("Cut sequence")));
        while (row.find()) {
            int first = Integer.parseInt(row.group(1));
            int last = row.group(2) == null ? first : Integer.parseInt(row.group(2));
            for (int step = first; step <= last; step++) {
                assertThat(rows.put(step, row.group())).as("step %d", step).isNull();
            }
        }
        return rows;
    }

    /** Sixty stools have 240 legs: what is done to all of them alike is one row, not seven pages. */
    @Test
    void theSameWorkOnManyPiecesIsOneRow() throws IOException {
        Job job = Pages.job("stools-measured");
        CuttingPlan plan = Pages.plan(job, "stools-measured");
        String text = Pages.text(PlanPdf.plan(job, plan, Paper.of(job)));
        Map<Integer, String> rows = stepRows(text);
        assertThat(rows).hasSize(plan.derived().cutSequence().size());
        assertThat(text).contains(" joint A1-240").contains(" glue C1-60").contains("C1-60/1-3");
        assertThat(rows.values().stream().distinct().count()).isLessThan(rows.size() / 3);
    }

    @Test
    void paperFollowsTheUnitOfTheJob() throws IOException {
        Job inches = HandMade.job();
        Job metric = Pages.job("wardrobe-metric");

        assertThat(Paper.of(inches)).isEqualTo(Paper.LETTER);
        assertThat(Paper.of(metric)).isEqualTo(Paper.A4);
        // ANSI/ASME Y14.1 size A: 8-1/2 x 11 in; ISO 216 A4: 210 x 297 mm.
        assertPaper(PlanPdf.buyingList(inches, HandMade.plan(inches), Paper.LETTER), 8.5 * 72, 11 * 72);
        assertPaper(PlanPdf.buyingList(inches, HandMade.plan(inches), Paper.A4), 210 / 25.4 * 72, 297 / 25.4 * 72);
    }

    @Test
    void theBuyingListSaysWhatItCostsAndWhatIsMissing() throws IOException {
        Job job = HandMade.job();

        String text = Pages.text(PlanPdf.buyingList(job, HandMade.plan(job), Paper.LETTER));

        // Two boards of $4.00 each, by hand.
        assertThat(text).contains("2 @plank").contains("$4.00 $8.00").contains("Can't be made from this wood");
    }

    @Test
    void theSamePlanGivesTheSameBytes() {
        Job job = HandMade.job();

        assertThat(PlanPdf.plan(job, HandMade.plan(job), Paper.LETTER))
                .isEqualTo(PlanPdf.plan(job, HandMade.plan(job), Paper.LETTER));
    }

    @Test
    void lettersOfManyScriptsPrintAndTheRestIsSaid() throws IOException {
        Job greek = HandMade.job("Пόдставка Ω", "élan ½");
        String text = Pages.text(PlanPdf.plan(greek, HandMade.plan(greek), Paper.LETTER));
        assertThat(text).contains("Пόдставка Ω").contains("élan ½").doesNotContain("About this print");

        Job chinese = HandMade.job("桌腿", "leg 🪵");
        String substituted = Pages.text(PlanPdf.plan(chinese, HandMade.plan(chinese), Paper.LETTER));
        assertThat(substituted)
                .contains("leg ?")
                .contains("About this print")
                .contains("A1")
                .contains("B2");
    }

    private static void assertPaper(byte[] pdf, double width, double height) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDPage page = document.getPage(0);
            assertThat((double) page.getMediaBox().getWidth()).isCloseTo(width, within(0.01));
            assertThat((double) page.getMediaBox().getHeight()).isCloseTo(height, within(0.01));
        }
    }

    private static Map<String, String> lyingPagesByTitle(PDDocument document) throws IOException {
        Map<String, String> pages = new HashMap<>();
        String title = "";
        for (int i = 1; i <= document.getNumberOfPages(); i++) {
            PDPage page = document.getPage(i - 1);
            if (page.getMediaBox().getWidth() > page.getMediaBox().getHeight()) {
                String text = Pages.text(document, i);
                String first = text.lines().findFirst().orElse("").strip();
                title = first.contains("#") ? first : title;
                pages.merge(title, text, String::concat);
            }
        }
        return pages;
    }

    private static String title(BoardGroup group) {
        int repeat = group.layout().repeat();
        return group.title() + (repeat == 1 ? "" : ": cut " + repeat + " alike");
    }
}
