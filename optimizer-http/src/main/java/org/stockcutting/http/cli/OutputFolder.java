package org.stockcutting.http.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.draw.LayoutPainter;
import org.stockcutting.http.print.SvgPrinter;
import org.stockcutting.io.CsvTables;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;

/** Writes a plan as files. Drawings of an earlier plan that this one has no use for are removed. */
final class OutputFolder {

    private static final String DRAWINGS = "layout-[0-9]*.svg";

    private final Path folder;

    OutputFolder(Path folder) {
        this.folder = folder;
    }

    void write(Job job, CuttingPlan plan, String document) {
        try {
            Files.createDirectories(folder);
            text("plan.json", document);
            text("buying-list.csv", CsvTables.buyingList(job, plan));
            text("cut-sequence.csv", CsvTables.cutSequence(job, plan));
            drawings(job, plan);
        } catch (IOException e) {
            throw new RefusedException(
                    folder.toString(),
                    List.of(new Fault(
                            "",
                            "unwritable",
                            folder.toString(),
                            "a folder that can be written to",
                            "The files cannot be written (" + e.getClass().getSimpleName()
                                    + "); is there a file of that name, or are you not allowed to?")));
        }
    }

    private void drawings(Job job, CuttingPlan plan) throws IOException {
        try (var old = Files.newDirectoryStream(folder, DRAWINGS)) {
            for (Path drawing : old) {
                Files.delete(drawing);
            }
        }
        LayoutPainter painter = new LayoutPainter(job);
        Map<String, Integer> next = new HashMap<>();
        for (int i = 0; i < plan.layouts().size(); i++) {
            Layout layout = plan.layouts().get(i);
            int first = next.getOrDefault(layout.stock(), 1);
            next.put(layout.stock(), first + layout.repeat());
            String number = i + 1 < 10 ? "0" + (i + 1) : Integer.toString(i + 1);
            Files.write(folder.resolve("layout-" + number + ".svg"), SvgPrinter.print(painter.drawing(layout, first)));
        }
    }

    private void text(String name, String content) throws IOException {
        Files.write(folder.resolve(name), content.getBytes(StandardCharsets.UTF_8));
    }
}
