package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.plan.Comparison;

/** A comparison for somebody who stands in front of the racks at the yard. */
public final class ComparisonText {

    static final String ROUGH = "Rough boards beside every choice: an estimate, in no price above";

    private static final int NAME = 34;

    private final String name;
    private final ComparisonRows rows;
    private final ComparisonSentences sentences;

    public ComparisonText(Job job) {
        this.name = job.name();
        this.rows = new ComparisonRows(job);
        this.sentences = new ComparisonSentences(job);
    }

    /** The text, lines ending with a line feed. */
    public String print(Comparison comparison) {
        TextPage page = new TextPage();
        page.line(name + ": what to buy");
        for (Comparison.Section section : comparison.components()) {
            page.gap().wrapped("For " + String.join(", ", section.parts()) + ":", "  ");
            section(section, page);
        }
        if (comparison.components().isEmpty()) {
            page.gap().line("No boards of fixed sizes to choose from.");
        }
        if (comparison.components().size() > 1) {
            page.gap();
            whole(comparison.whole(), page);
        }
        List<String> limits = sentences.limits(comparison);
        if (!limits.isEmpty()) {
            page.gap().line("What the limits cost, over the whole job");
            limits.forEach(sentence -> page.wrapped("  " + sentence, "    "));
        }
        List<String> estimates = sentences.estimates(comparison);
        if (!estimates.isEmpty()) {
            page.gap().line(ROUGH);
            estimates.forEach(sentence -> page.wrapped("  " + sentence, "    "));
        }
        return page.toString();
    }

    private void section(Comparison.Section section, TextPage page) {
        table(section, page);
        List<String> incomplete = rows.incomplete(section);
        if (!incomplete.isEmpty()) {
            page.wrapped("  Not everything can be made from: " + String.join("; ", incomplete) + ".", "    ");
        }
        sentences.savings(section).forEach(sentence -> page.wrapped("  " + sentence, "    "));
    }

    /** Over the whole job most single lengths leave parts out; what makes everything is told. */
    private void whole(Comparison.Section whole, TextPage page) {
        if (whole.allTogether().isComplete()) {
            page.line("The whole job, where everything can be made:");
            table(whole, page);
        }
        page.wrapped("  " + sentences.whole(whole), "    ");
    }

    private void table(Comparison.Section section, TextPage page) {
        List<List<String>> complete = rows.complete(section);
        if (complete.isEmpty()) {
            return;
        }
        List<List<String>> table = new ArrayList<>(List.of(rows.head()));
        for (List<String> row : complete) {
            List<String> clipped = new ArrayList<>(row);
            clipped.set(0, Clip.to(row.get(0), NAME));
            table.add(clipped);
        }
        page.table(rows.right(), table);
        if (complete.size() > 1) {
            page.line("  * no other choice is as good in money, wood lost, boards and set-ups, and better in one.");
        }
    }
}
