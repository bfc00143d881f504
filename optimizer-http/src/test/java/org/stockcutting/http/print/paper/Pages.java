package org.stockcutting.http.print.paper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.stockcutting.http.PlanDocuments;
import org.stockcutting.io.JobReader;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;

/** Reads prints back, and the samples' jobs with the plans that are expected for them. */
final class Pages {

    private static final Path SAMPLES = Path.of("..", "samples");

    private Pages() {}

    static Job job(String name) throws IOException {
        Job job = new JobReader()
                .read(Files.readAllBytes(SAMPLES.resolve(Path.of("jobs", name + ".json"))))
                .job();
        if (job == null) {
            throw new AssertionError("the sample " + name + " has faults");
        }
        return job;
    }

    static CuttingPlan plan(Job job, String name) throws IOException {
        String document = Files.readString(SAMPLES.resolve(Path.of("expected", name + ".plan.json")));
        CuttingPlan plan = PlanDocuments.reader(job).read(document).plan();
        if (plan == null) {
            throw new AssertionError("the expected plan of " + name + " cannot be read");
        }
        return plan;
    }

    static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    /** Text of one page, counted from 1. */
    static String text(PDDocument document, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(document);
    }
}
