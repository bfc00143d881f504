package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.SortedMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.Certificate;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Objective;
import org.stockcutting.plan.PlanHeader;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.stock.Money;

/**
 * Writes plan documents: the same plan gives the same bytes, on every machine. Lengths are exact, in the unit and with the decimal mark
 * of the job; amounts, volumes and other decimals have a point.
 */
public final class PlanWriter {

    private final Job job;
    private final LengthWriter lengths;
    private final GoalText goal;

    /**
     * @param job the job that plans are written for
     */
    public PlanWriter(Job job) {
        this.job = job;
        this.lengths = new LengthWriter(job.writing().unit(), job.writing().decimal());
        this.goal = new GoalText(job, job.goal());
    }

    /**
     * The plan as a document.
     *
     * @param plan a plan of this job
     * @param defaults defaults that were filled in when the job was read, by their pointers
     */
    public String write(CuttingPlan plan, SortedMap<String, String> defaults) {
        return JsonOutput.pretty(tree(plan, defaults));
    }

    ObjectNode tree(CuttingPlan plan, SortedMap<String, String> defaults) {
        ObjectNode doc = JsonOutput.object().put("format", JobReader.FORMAT);
        header(doc, plan.header());
        values(doc, plan.cost(), plan.objective());
        LayoutNodes layouts = new LayoutNodes(job, lengths);
        ArrayNode list = doc.putArray("layouts");
        plan.layouts().forEach(layout -> list.add(layouts.layout(layout)));
        unplaced(doc.putArray("unplaced"), plan.unplaced());
        certificate(doc.putObject("certificate").putArray("components"), plan.certificate());
        ObjectNode check = doc.putObject("check").put("valid", plan.violations().isEmpty());
        ArrayNode violations = check.putArray("violations");
        for (Violation v : plan.violations()) {
            violations
                    .addObject()
                    .put("cause", v.cause())
                    .put("pointer", v.pointer())
                    .put("text", v.text());
        }
        new DerivedNodes(job, lengths).put(doc, plan.derived());
        ObjectNode filledIn = doc.putObject("defaults");
        defaults.forEach(filledIn::put);
        return doc;
    }

    private static void header(ObjectNode doc, PlanHeader header) {
        doc.put("job", header.job())
                .put("jobHash", header.jobHash())
                .put("status", header.status().word())
                .put("stopReason", header.stopReason().word())
                .put("reproducible", header.reproducible())
                .put("seed", header.seed())
                .put("work", header.work())
                .put("workVersion", header.workVersion())
                .put("engine", header.engine());
    }

    /** Bounds and gap stand with the money where money is the goal, else with the objective. */
    void values(ObjectNode doc, @Nullable Money paid, Objective objective) {
        boolean money = objective.goal() == Goal.COST && paid != null;
        if (paid != null) {
            ObjectNode cost = doc.putObject("cost")
                    .put("amount", paid.amount().toPlainString())
                    .put("currency", paid.currency().getCurrencyCode());
            if (money) {
                cost.put("bound", goal.write(objective.bound()));
                searchedBoundAndGap(cost, objective);
            }
        }
        ObjectNode node = doc.putObject("objective")
                .put("goal", objective.goal().word())
                .put("value", goal.write(objective.value()))
                .put("bound", goal.write(objective.bound()));
        if (!money) {
            searchedBoundAndGap(node, objective);
        }
    }

    private void searchedBoundAndGap(ObjectNode node, Objective objective) {
        if (objective.searchedBound() != null) {
            node.put("searchedBound", goal.write(objective.searchedBound()));
        }
        node.put("gap", GoalText.gap(objective.value(), objective.bound()));
    }

    static void unplaced(ArrayNode list, List<Unplaced> unplaced) {
        for (Unplaced u : unplaced) {
            ObjectNode node = list.addObject()
                    .put("part", u.part())
                    .put("quantity", u.quantity())
                    .put("reason", u.reason().word());
            putText(node, "needs", u.needs());
            putText(node, "limit", u.limit());
            node.put("remedy", u.remedy());
        }
    }

    private void certificate(ArrayNode components, Certificate certificate) {
        for (Certificate.Component component : certificate.components()) {
            ObjectNode node = components.addObject();
            ArrayNode stock = node.putArray("stock");
            component.stock().forEach(stock::add);
            duals(node.putArray("duals"), component.duals());
            if (!component.rows().isEmpty()) {
                ArrayNode rows = node.putArray("rows");
                component.rows().forEach(row -> duals(rows.addArray(), row));
            }
            node.put("bound", goal.write(component.bound()));
        }
    }

    private void duals(ArrayNode list, List<Certificate.Dual> duals) {
        for (Certificate.Dual dual : duals) {
            list.addArray().add(dual.part()).add(goal.dual(dual.part(), dual.value()));
        }
    }

    static void putText(ObjectNode node, String name, @Nullable String text) {
        if (text != null) {
            node.put(name, text);
        }
    }
}
