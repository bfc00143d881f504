package org.stockcutting.http.print;

import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Comparison;

/** A comparison as one page that needs nothing from anywhere: no script, no picture or font from outside. */
public final class ComparisonPage {

    private static final String STYLE = """
            :root { color-scheme: light; }
            body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 62rem; background: #fff; color: #332f2a;
              font: 16px/1.5 system-ui, sans-serif; }
            h1 { font-size: 1.6rem; margin: 0 0 .25rem; }
            h2 { font-size: 1.15rem; margin: 2.25rem 0 .25rem; }
            p, li { max-width: 46rem; }
            .scroll { overflow-x: auto; }
            table { border-collapse: collapse; font-size: .875rem; font-variant-numeric: tabular-nums; }
            th, td { padding: .3rem .75rem .3rem 0; text-align: right; white-space: nowrap; border-bottom: 1px solid #d9d3c7; }
            th:first-child, td:first-child { text-align: left; }
            th { font-weight: 600; border-bottom-color: #332f2a; }
            svg { display: block; width: 100%; min-width: 40rem; height: auto; max-width: 860px; margin: 1rem 0; }
            """;

    private final Job job;
    private final ComparisonRows rows;
    private final ComparisonSentences sentences;

    public ComparisonPage(Job job) {
        this.job = job;
        this.rows = new ComparisonRows(job);
        this.sentences = new ComparisonSentences(job);
    }

    /** The page, to be written in UTF-8. */
    public String print(Comparison comparison) {
        String title = escaped(job.name() + ": what to buy");
        StringBuilder page = new StringBuilder(
                        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
                .append(title)
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<h1>")
                .append(title)
                .append("</h1>\n");
        if (comparison.components().isEmpty()) {
            page.append("<p>No boards of fixed sizes to choose from.</p>\n");
        } else {
            page.append("<div class=\"scroll\">\n")
                    .append(new ComparisonPicture(job).inline(comparison))
                    .append("</div>\n");
        }
        if (comparison.components().size() > 1) {
            page.append("<p>")
                    .append(escaped(sentences.whole(comparison.whole())))
                    .append("</p>\n");
        }
        for (Comparison.Section section : comparison.components()) {
            section(page, "For " + String.join(", ", section.parts()), section);
        }
        if (comparison.components().size() > 1) {
            section(page, "The whole job", comparison.whole());
        }
        List<String> limits = sentences.limits(comparison);
        if (!limits.isEmpty()) {
            page.append("<h2>What the limits cost, over the whole job</h2>\n");
            list(page, limits);
        }
        List<String> estimates = sentences.estimates(comparison);
        if (!estimates.isEmpty()) {
            page.append("<h2>").append(ComparisonText.ROUGH).append("</h2>\n");
            list(page, estimates);
        }
        return page.append("</body>\n</html>\n").toString();
    }

    private void section(StringBuilder page, String title, Comparison.Section section) {
        page.append("<h2>").append(escaped(title)).append("</h2>\n");
        List<List<String>> complete = rows.complete(section);
        if (!complete.isEmpty()) {
            page.append("<div class=\"scroll\">\n<table>\n<thead><tr>");
            rows.head()
                    .forEach(name -> page.append("<th scope=\"col\">")
                            .append(escaped(name))
                            .append("</th>"));
            page.append("</tr></thead>\n<tbody>\n");
            for (List<String> row : complete) {
                page.append("<tr>");
                row.forEach(cell -> page.append("<td>").append(escaped(cell)).append("</td>"));
                page.append("</tr>\n");
            }
            page.append("</tbody>\n</table>\n</div>\n");
            page.append(
                    complete.size() == 1
                            ? ""
                            : "<p>* no other choice is as good in money, wood lost, boards and set-ups, and better in one.</p>\n");
        }
        List<String> incomplete = rows.incomplete(section);
        if (!incomplete.isEmpty()) {
            page.append("<p>Not everything can be made from: ")
                    .append(escaped(String.join("; ", incomplete)))
                    .append(".</p>\n");
        }
        list(page, sentences.savings(section));
    }

    private static void list(StringBuilder page, List<String> lines) {
        if (!lines.isEmpty()) {
            page.append("<ul>\n");
            lines.forEach(line -> page.append("<li>").append(escaped(line)).append("</li>\n"));
            page.append("</ul>\n");
        }
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
