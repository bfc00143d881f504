package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.stock.Money;
import org.stockcutting.wood.Chance;
import org.stockcutting.wood.GroupRisk;
import org.stockcutting.wood.KnotModel;
import org.stockcutting.wood.WoodRisk;

/**
 * Writes how many boards to take to be sure. The plan's cost and bound stand beside it, unchanged; everything else is an estimate and says
 * so. {@link RiskFields} has the fields.
 */
public final class RiskWriter {

    private RiskWriter() {}

    /**
     * The document.
     *
     * @param job the job
     * @param plan its plan
     * @param risk what was simulated for this plan
     */
    public static String write(Job job, CuttingPlan plan, WoodRisk risk) {
        LengthWriter lengths =
                new LengthWriter(job.writing().unit(), job.writing().decimal());
        ObjectNode doc = JsonOutput.object()
                .put("format", JobReader.FORMAT)
                .put("job", plan.header().job())
                .put("jobHash", plan.header().jobHash())
                .put("planStatus", plan.header().status().word())
                .put("estimate", true)
                .put("seed", risk.seed())
                .put("confidence", risk.wanted().toPlainString())
                .put("reached", risk.reached());
        money(doc, "planCost", plan.cost());
        money(doc, "extraCost", risk.extraCost());
        money(doc, "averageExtra", risk.averageExtra());
        doc.set("chance", chance(risk.chance()));
        doc.set("oneGoesBack", chance(risk.goesBack()));
        ArrayNode groups = doc.putArray("groups");
        risk.groups().forEach(group -> groups.add(group(group, lengths)));
        return JsonOutput.pretty(doc);
    }

    private static void money(ObjectNode doc, String name, @org.jspecify.annotations.Nullable Money money) {
        if (money != null) {
            doc.putObject(name)
                    .put("amount", money.amount().toPlainString())
                    .put("currency", money.currency().getCurrencyCode());
        }
    }

    static ObjectNode chance(Chance chance) {
        return JsonOutput.object()
                .put("finished", chance.finished())
                .put("trials", chance.trials())
                .put("share", chance.share().toPlainString())
                .put("low", chance.low().toPlainString())
                .put("high", chance.high().toPlainString());
    }

    private static ObjectNode group(GroupRisk group, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object();
        group.parts().forEach(node.putArray("parts")::add);
        ArrayNode planned = node.putArray("planned");
        for (int i = 0; i < group.planned().size(); i++) {
            GroupRisk.Planned line = group.planned().get(i);
            ObjectNode entry = planned.addObject().put("stock", line.stock()).put("quantity", line.quantity());
            entry.set("model", model(group.models().get(i), lengths));
        }
        node.put("extraStock", group.extra()).put("takeMore", group.take());
        ArrayNode rows = node.putArray("chances");
        for (GroupRisk.Row row : group.rows()) {
            rows.addObject().put("boards", row.boards()).put("more", row.more()).setAll(chance(row.chance()));
        }
        return node;
    }

    private static ObjectNode model(KnotModel model, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object();
        JobWriter.put(node, "clearRun", model.clearRun(), lengths);
        JobWriter.put(node, "zone", model.zone(), lengths);
        JobWriter.put(node, "endCheck", model.endCheck(), lengths);
        return node.put("unusableBoards", model.unusableBoards().toPlainString())
                .put("tightKnots", model.tightKnots().toPlainString())
                .put("blemishes", model.blemishes().toPlainString())
                .put("origin", model.origin());
    }
}
