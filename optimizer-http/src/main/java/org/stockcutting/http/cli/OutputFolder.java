package org.stockcutting.http.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.LayoutDrawing;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.http.print.BoardGroup;
import org.stockcutting.http.print.PngPrinter;
import org.stockcutting.http.print.SvgPrinter;
import org.stockcutting.http.print.paper.LabelPdf;
import org.stockcutting.http.print.paper.Paper;
import org.stockcutting.http.print.paper.PlanPdf;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobWriter;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Replan;

/** Writes a plan as files. Drawings of an earlier plan that this one has no use for are removed. */
final class OutputFolder {

    private static final String DRAWINGS = "layout-[0-9]*.{svg,png}";

    private final Path folder;

    private final Paper paper;
    private final boolean png;

    /**
     * A folder to write to, made where it is missing.
     *
     * @param paper size of the pages to print
     * @param png true if each layout is wanted as a PNG picture too
     */
    OutputFolder(Path folder, Paper paper, boolean png) {
        this.folder = folder;
        this.paper = paper;
        this.png = png;
    }

    void write(Job job, CuttingPlan plan, String document) {
        try {
            Files.createDirectories(folder);
            text("plan.json", document);
            text("buying-list.csv", CsvTables.buyingList(job, plan));
            text("cut-sequence.csv", CsvTables.cutSequence(job, plan));
            text("pieces.csv", CsvTables.pieces(job, plan));
            text("offcuts.csv", CsvTables.offcuts(job, plan));
            if (!plan.derived().tradeOff().rows().isEmpty()) {
                text("trade-off.csv", CsvTables.tradeOff(job, plan));
            }
            drawings(job, plan);
            Files.write(folder.resolve("plan.pdf"), PlanPdf.plan(job, plan, paper));
            Files.write(folder.resolve("labels.pdf"), LabelPdf.labels(job, plan, paper));
        } catch (IOException e) {
            throw unwritable(folder, "a folder that can be written to", e);
        }
    }

    /** Writes what is left after a mishap: its document, the job that is left, and the new plan as above. */
    void write(Replan replan, String document, @Nullable String planDocument) {
        Job job = replan.job();
        CuttingPlan plan = replan.plan();
        if (job != null && plan != null && planDocument != null) {
            write(job, plan, planDocument);
        }
        try {
            Files.createDirectories(folder);
            text("replan.json", document);
            if (job != null) {
                text("job.json", JobWriter.write(job));
            }
        } catch (IOException e) {
            throw unwritable(folder, "a folder that can be written to", e);
        }
    }

    /** Writes one file by itself. */
    static void file(Path file, byte[] content) {
        try {
            Files.write(file, content);
        } catch (IOException e) {
            throw unwritable(file, "a file that can be written", e);
        }
    }

    private static RefusedException unwritable(Path place, String wanted, IOException e) {
        return new RefusedException(
                place.toString(),
                List.of(new Fault(
                        "",
                        "unwritable",
                        place.toString(),
                        wanted,
                        "The files cannot be written (" + e.getClass().getSimpleName()
                                + "); is there a file of that name, or are you not allowed to?")));
    }

    private void drawings(Job job, CuttingPlan plan) throws IOException {
        try (var old = Files.newDirectoryStream(folder, DRAWINGS)) {
            for (Path drawing : old) {
                Files.delete(drawing);
            }
        }
        LayoutPainter painter = new LayoutPainter(job);
        int i = 0;
        for (BoardGroup group : BoardGroup.of(plan)) {
            i++;
            String name = "layout-" + (i < 10 ? "0" + i : Integer.toString(i));
            LayoutDrawing drawing = painter.drawing(group.layout(), group.first());
            Files.write(folder.resolve(name + ".svg"), SvgPrinter.print(drawing));
            if (png) {
                Files.write(folder.resolve(name + ".png"), PngPrinter.print(drawing));
            }
        }
    }

    private void text(String name, String content) throws IOException {
        Files.write(folder.resolve(name), content.getBytes(StandardCharsets.UTF_8));
    }
}
