package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.Difference;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.Status;

/** Reads the documents that {@link ComparisonWriter} writes, finding every fault of text and shape at once. */
public final class ComparisonReader {

    private final Job job;
    private final PlanReader plans;

    /**
     * @param job the job that was compared: its unit, decimal mark, currency and goal say how the document is read
     */
    public ComparisonReader(Job job) {
        this.job = job;
        this.plans = new PlanReader(job);
    }

    /** Reads a document. Never throws on bad input. */
    public ComparisonReading read(String json) {
        Faults faults = new Faults();
        ObjectNode root = JsonText.PLAN.object(json, faults);
        if (root == null) {
            return new ComparisonReading(null, faults.list());
        }
        Reading reading = new Reading(ComparisonFields.COMPARISON, faults);
        reading.write(job.writing().unit(), job.writing().decimal());
        DocObject doc = new DocObject(reading, root, "", "");
        JobReader.checkFormat(doc, faults);
        Comparison comparison = comparison(doc, reading);
        return faults.isEmpty()
                ? new ComparisonReading(comparison, List.of())
                : new ComparisonReading(null, faults.list());
    }

    private Comparison comparison(DocObject doc, Reading reading) {
        List<Comparison.Section> components = new ArrayList<>();
        for (DocObject node : doc.objects("components")) {
            if (node != null) {
                components.add(section(node, node.texts("parts"), savings(node, reading), reading));
            }
        }
        List<String> parts = job.parts().stream().map(Part::id).sorted().toList();
        return new Comparison(
                Or.of(doc.text("job"), Or.NAME),
                Or.of(doc.text("jobHash"), Or.NAME),
                Or.of(doc.word("goal", Goal.values(), Goal::word), job.goal()),
                Or.of(doc.bool("reproducible"), true),
                Or.of(doc.longInteger("seed"), 1L),
                Or.of(doc.longInteger("work"), 0L),
                Or.of(doc.integer("workVersion"), 1),
                Or.of(doc.text("engine"), Or.NAME),
                components,
                section(doc, parts, List.of(), reading),
                limits(doc, reading),
                new DerivedReader(job, reading).estimates(doc));
    }

    private Comparison.Section section(
            DocObject node, List<String> parts, List<Comparison.Saving> savings, Reading reading) {
        List<Choice> choices = new ArrayList<>();
        for (DocObject choice : node.objects("choices")) {
            if (choice != null) {
                choices.add(choice(choice, reading));
            }
        }
        DocObject best = node.objectOrEmpty("best");
        return new Comparison.Section(
                parts,
                choices,
                new Comparison.Best(
                        best.integer("cost"), best.integer("waste"), best.integer("boards"), best.integer("setUps")),
                node.integers("front"),
                savings);
    }

    private List<Comparison.Saving> savings(DocObject component, Reading reading) {
        List<Comparison.Saving> savings = new ArrayList<>();
        for (DocObject node : component.objects("savings")) {
            DocObject without = node == null ? null : node.object("without");
            if (node != null && without != null) {
                savings.add(new Comparison.Saving(
                        Or.of(node.text("stock"), Or.NAME), choice(without, reading), difference(node)));
            }
        }
        return savings;
    }

    private List<Comparison.LimitPrice> limits(DocObject doc, Reading reading) {
        List<Comparison.LimitPrice> limits = new ArrayList<>();
        for (DocObject node : doc.objects("limits")) {
            DocObject without = node == null ? null : node.object("without");
            if (node != null && without != null) {
                limits.add(new Comparison.LimitPrice(
                        Or.of(
                                node.word("limit", Comparison.Limit.values(), Comparison.Limit::word),
                                Comparison.Limit.CAR_LENGTH),
                        node.text("name"),
                        choice(without, reading),
                        difference(node)));
            }
        }
        return limits;
    }

    private Choice choice(DocObject node, Reading reading) {
        DocObject cost = node.object("cost");
        Objective objective = plans.objective(node, cost, reading.faults());
        return new Choice(
                node.texts("stock"),
                Or.of(node.word("status", Status.values(), Status::word), Status.FEASIBLE),
                plans.cost(cost, objective, reading.faults()),
                objective,
                Or.of(node.integer("boards"), 0),
                new DerivedReader(job, reading).figures(node.object("yield")),
                Or.of(node.integer("setUps"), 0),
                node.parsed("weight", FaultCode.NOT_AN_AMOUNT, ComparisonReader::grams),
                node.length("longest"),
                PlanReader.unplaced(node));
    }

    private static @Nullable Long grams(String text) {
        String unit = ComparisonWriter.KILOGRAMS;
        BigDecimal kilograms =
                text.endsWith(unit) ? GoalText.decimal(text.substring(0, text.length() - unit.length())) : null;
        if (kilograms == null || kilograms.scale() > ComparisonWriter.GRAMS || kilograms.precision() > 18) {
            return null;
        }
        return kilograms.movePointRight(ComparisonWriter.GRAMS).longValueExact();
    }

    private Difference difference(DocObject node) {
        GoalText text = new GoalText(job, job.goal());
        BigInteger saves = PlanReader.value(node, "saves", text);
        return new Difference(
                saves,
                PlanReader.value(node, "atLeast", text),
                PlanReader.value(node, "atMost", text),
                Or.of(node.bool("needed"), false));
    }
}
