package org.stockcutting.io;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.length.Volume;
import org.stockcutting.length.VolumeWriter;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.Estimate;
import org.stockcutting.stock.Money;

/** A comparison as a table: one row a choice. */
final class ComparisonTable {

    private static final List<String> HEADER = List.of(
            "component",
            "stock",
            "status",
            "cost",
            "currency",
            "value",
            "bound",
            "boards",
            "setUps",
            "used",
            "parts",
            "lost",
            "ratio",
            "weight",
            "longest",
            "best",
            "front");

    private final Job job;
    private final LengthWriter lengths;
    private final VolumeWriter volumes;
    private final GoalText goal;
    private final List<List<String>> rows = new ArrayList<>();

    private ComparisonTable(Job job) {
        this.job = job;
        this.lengths = new LengthWriter(job.writing().unit(), job.writing().decimal());
        this.volumes = new VolumeWriter(job.writing().unit());
        this.goal = new GoalText(job, job.goal());
    }

    static String write(Job job, Comparison comparison) {
        ComparisonTable table = new ComparisonTable(job);
        for (int c = 0; c < comparison.components().size(); c++) {
            table.add(c + 1, comparison.components().get(c));
        }
        table.add(0, comparison.whole());
        comparison.estimates().forEach(table::add);
        return CsvText.write(HEADER, table.rows);
    }

    private void add(int component, Comparison.Section section) {
        for (int i = 0; i < section.choices().size(); i++) {
            Choice choice = section.choices().get(i);
            List<String> row = new ArrayList<>();
            row.add(Integer.toString(component));
            row.add(CsvText.guarded(String.join("; ", choice.stock())));
            row.add(choice.status().word());
            row.add(choice.cost() == null ? "" : choice.cost().amount().toPlainString());
            row.add(choice.cost() == null ? "" : job.writing().currency().getCurrencyCode());
            row.add(goal.write(choice.objective().value()));
            row.add(goal.write(choice.objective().bound()));
            row.add(Integer.toString(choice.boards()));
            row.add(Integer.toString(choice.setUps()));
            row.add(volumes.exact(choice.yield().used()));
            row.add(volumes.exact(choice.yield().parts()));
            row.add(volumes.exact(new Volume(choice.waste())));
            row.add(choice.yield().ratio().toPlainString());
            row.add(
                    choice.weightGrams() == null
                            ? ""
                            : BigDecimal.valueOf(choice.weightGrams(), ComparisonWriter.GRAMS)
                                    .toPlainString());
            row.add(choice.longest() == null ? "" : lengths.exact(choice.longest()));
            row.add(String.join(" ", best(section.best(), i)));
            row.add(section.front().contains(i) ? "yes" : "no");
            rows.add(row);
        }
    }

    /** What is bought on average, marked an estimate: nothing to rank by. */
    private void add(Estimate estimate) {
        Money cost = estimate.cost();
        List<String> row = new ArrayList<>(Collections.nCopies(HEADER.size(), ""));
        row.set(HEADER.indexOf("stock"), CsvText.guarded(estimate.stock()));
        row.set(HEADER.indexOf("status"), "estimate");
        row.set(HEADER.indexOf("cost"), cost == null ? "" : cost.amount().toPlainString());
        row.set(HEADER.indexOf("currency"), cost == null ? "" : cost.currency().getCurrencyCode());
        row.set(HEADER.indexOf("boards"), Integer.toString(estimate.boards()));
        row.set(HEADER.indexOf("used"), volumes.exact(estimate.volume()));
        row.set(HEADER.indexOf("front"), "no");
        rows.add(row);
    }

    private static List<String> best(Comparison.Best best, int index) {
        List<String> names = new ArrayList<>();
        add(names, "cost", best.cost(), index);
        add(names, "waste", best.waste(), index);
        add(names, "boards", best.boards(), index);
        add(names, "setUps", best.setUps(), index);
        return names;
    }

    private static void add(
            List<String> names, String name, @org.jspecify.annotations.Nullable Integer best, int index) {
        if (best != null && best == index) {
            names.add(name);
        }
    }
}
