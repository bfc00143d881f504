package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.http.print.Amounts;
import org.stockcutting.http.print.BoundText;
import org.stockcutting.http.print.BuyingText;
import org.stockcutting.http.print.CautionText;
import org.stockcutting.http.print.EstimateText;
import org.stockcutting.http.print.UnplacedText;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.report.ChalkMarks;
import org.stockcutting.stock.StockItem;

/** The first pages: what to buy, what comes from the rack, the parts with their marks, what goes back, what to take care of. */
final class BuyingPages {

    private final Job job;
    private final Amounts amounts;
    private final PrintedLengths lengths;

    BuyingPages(Job job) {
        this.job = job;
        amounts = new Amounts(job.writing());
        lengths = new PrintedLengths(job.writing());
    }

    void shopping(CuttingPlan plan, Flow flow) {
        flow.title(job.name().isBlank() ? "Cutting plan" : job.name());
        buying(plan, flow);
        rack(plan, flow);
        if (!plan.unplaced().isEmpty()) {
            flow.heading("Can't be made from this wood");
            plan.unplaced().forEach(missing -> flow.paragraph(UnplacedText.sentence(missing), Flow.BODY, 14));
        }
    }

    void parts(CuttingPlan plan, Flow flow) {
        ChalkMarks marks = new ChalkMarks(job);
        flow.heading("Parts and the marks to chalk on them");
        Table table = new Table()
                .column("mark")
                .column("part")
                .numbers("how many")
                .column("finished size, " + lengths.unit())
                .column("material")
                .column("note");
        for (Part part : job.parts()) {
            table.row(
                    marks.of(part.id()),
                    part.id(),
                    job.demand(part) + (part.spares() == 0 ? "" : " + " + part.spares()),
                    lengths.part(part.length()) + " x " + section(part.section()),
                    part.material(),
                    orEmpty(part.note()));
        }
        flow.table(table);
        leftovers(plan, flow);
        cautions(plan, flow);
    }

    private void buying(CuttingPlan plan, Flow flow) {
        flow.heading("To buy");
        if (plan.derived().buyingList().isEmpty()) {
            flow.paragraph(plan.derived().estimates().isEmpty() ? "Nothing to buy." : "Nothing to buy of fixed sizes.");
        } else {
            BuyingText text = new BuyingText(job, amounts, lengths);
            List<List<String>> rows = text.rows(plan);
            List<String> head = rows.get(0);
            Table table = new Table()
                    .numbers(head.get(0))
                    .column(head.get(1))
                    .column(head.get(2))
                    .numbers(head.get(3))
                    .numbers(head.get(4))
                    .numbers(head.get(5));
            for (int i = 1; i < rows.size(); i++) {
                String[] cells = rows.get(i).toArray(String[]::new);
                if (i + 1 < rows.size()) {
                    table.tickRow(cells);
                } else {
                    table.row(cells);
                }
            }
            flow.table(table);
            text.notes(plan).forEach(flow::paragraph);
        }
        if (!plan.layouts().isEmpty()) {
            flow.paragraph(BoundText.sentence(plan, amounts));
        }
        estimates(plan, flow);
    }

    private void estimates(CuttingPlan plan, Flow flow) {
        if (plan.derived().estimates().isEmpty()) {
            return;
        }
        flow.heading("Rough boards to buy: an estimate, not a plan");
        EstimateText text = new EstimateText(job, amounts, lengths);
        plan.derived()
                .estimates()
                .forEach(estimate -> text.sentences(estimate).forEach(said -> flow.paragraph(said, Flow.BODY, 14)));
    }

    private void rack(CuttingPlan plan, Flow flow) {
        Map<String, Integer> used = new BuyingText(job, amounts, lengths).fromOnHand(plan);
        if (used.isEmpty()) {
            return;
        }
        flow.heading("From the rack");
        Table table = new Table()
                .numbers("how many")
                .column("what")
                .column("size, " + lengths.unit())
                .column("material");
        for (StockItem.OnHand item : job.onHand()) {
            Integer count = used.get(item.id());
            if (count != null) {
                table.tickRow(count.toString(), item.id(), gapSize(item), item.material());
            }
        }
        flow.table(table);
    }

    private void leftovers(CuttingPlan plan, Flow flow) {
        if (plan.derived().offcuts().isEmpty()) {
            return;
        }
        flow.heading("Worth keeping");
        Table table = new Table()
                .numbers("how many")
                .column("name")
                .column("size, " + lengths.unit())
                .column("material");
        for (StockItem.OnHand offcut : plan.derived().offcuts()) {
            table.tickRow(Integer.toString(offcut.quantity()), offcut.id(), gapSize(offcut), offcut.material());
        }
        flow.table(table);
    }

    private static void cautions(CuttingPlan plan, Flow flow) {
        List<String> said = new ArrayList<>(CautionText.sentences(plan));
        said.add(
                "These are usual cautions; none of them says that a cut without one is safe. The manual of the machine and"
                        + " the rules of the place have the last word.");
        flow.heading("Take care");
        for (String sentence : said) {
            flow.paragraph("- " + sentence, Flow.BODY, 10);
        }
    }

    private String section(Section section) {
        return section instanceof Section.Measured measured
                ? lengths.part(measured.width()) + " x " + lengths.part(measured.thickness())
                : ((Section.Nominal) section).name();
    }

    private String gapSize(StockItem item) {
        return lengths.gap(item.length()) + " x " + lengths.gap(item.width()) + " x " + lengths.gap(item.thickness());
    }

    private static String orEmpty(@Nullable String text) {
        return text == null ? "" : text;
    }
}
