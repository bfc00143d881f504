package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.Difference;

/** Writes comparison documents, exact and always in the same form, as {@link PlanWriter} does plans. */
public final class ComparisonWriter {

    /** What stands behind the number of a weight. */
    static final String KILOGRAMS = " kg";

    static final int GRAMS = 3;

    private final LengthWriter lengths;
    private final PlanWriter plans;
    private final DerivedNodes derived;
    private final GoalText goal;

    /**
     * @param job the job that was compared
     */
    public ComparisonWriter(Job job) {
        this.lengths = new LengthWriter(job.writing().unit(), job.writing().decimal());
        this.plans = new PlanWriter(job);
        this.derived = new DerivedNodes(job, lengths);
        this.goal = new GoalText(job, job.goal());
    }

    /** The comparison as a document. */
    public String write(Comparison comparison) {
        ObjectNode doc = JsonOutput.object()
                .put("format", JobReader.FORMAT)
                .put("job", comparison.job())
                .put("jobHash", comparison.jobHash())
                .put("goal", comparison.goal().word())
                .put("reproducible", comparison.reproducible())
                .put("seed", comparison.seed())
                .put("work", comparison.work())
                .put("workVersion", comparison.workVersion())
                .put("engine", comparison.engine());
        ArrayNode components = doc.putArray("components");
        for (Comparison.Section section : comparison.components()) {
            ObjectNode node = components.addObject();
            section.parts().forEach(node.putArray("parts")::add);
            ranked(node, section);
            ArrayNode savings = node.putArray("savings");
            section.savings()
                    .forEach(saving -> difference(
                            savings.addObject().put("stock", saving.stock()), saving.difference(), saving.without()));
        }
        ranked(doc, comparison.whole());
        ArrayNode limits = doc.putArray("limits");
        for (Comparison.LimitPrice price : comparison.limits()) {
            ObjectNode node = limits.addObject().put("limit", price.limit().word());
            PlanWriter.putText(node, "name", price.name());
            difference(node, price.difference(), price.without());
        }
        derived.putEstimates(doc, comparison.estimates());
        return JsonOutput.pretty(doc);
    }

    private void ranked(ObjectNode node, Comparison.Section section) {
        ArrayNode choices = node.putArray("choices");
        section.choices().forEach(choice -> choices.add(choice(choice)));
        ObjectNode best = node.putObject("best");
        put(best, "cost", section.best().cost());
        put(best, "waste", section.best().waste());
        put(best, "boards", section.best().boards());
        put(best, "setUps", section.best().setUps());
        section.front().forEach(node.putArray("front")::add);
    }

    private static void put(ObjectNode node, String name, @Nullable Integer number) {
        if (number != null) {
            node.put(name, number);
        }
    }

    private ObjectNode choice(Choice choice) {
        ObjectNode node = JsonOutput.object();
        choice.stock().forEach(node.putArray("stock")::add);
        node.put("status", choice.status().word());
        plans.values(node, choice.cost(), choice.objective());
        node.put("boards", choice.boards());
        node.set("yield", derived.figures(choice.yield()));
        node.put("setUps", choice.setUps());
        if (choice.weightGrams() != null) {
            node.put("weight", BigDecimal.valueOf(choice.weightGrams(), GRAMS).toPlainString() + KILOGRAMS);
        }
        JobWriter.put(node, "longest", choice.longest(), lengths);
        if (!choice.isComplete()) {
            PlanWriter.unplaced(node.putArray("unplaced"), choice.unplaced());
        }
        return node;
    }

    private void difference(ObjectNode node, Difference difference, Choice without) {
        if (difference.saves() != null && difference.atLeast() != null && difference.atMost() != null) {
            node.put("saves", goal.write(difference.saves()))
                    .put("atLeast", goal.write(difference.atLeast()))
                    .put("atMost", goal.write(difference.atMost()));
        }
        node.put("needed", difference.needed());
        node.set("without", choice(without));
    }
}
