package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.report.BandLine;
import org.stockcutting.report.Reckoning;
import org.stockcutting.report.TradeSums;
import org.stockcutting.stock.StockItem;

/** Writes the buying list of a plan as a document of its own: what to buy, its total, what is used from the rack, what
 * the load weighs, how much wide parts move, and warnings. */
public final class BuyingListWriter {

    private BuyingListWriter() {}

    /**
     * The buying list document.
     *
     * @param job the job
     * @param plan a plan of this job
     */
    public static String write(Job job, CuttingPlan plan) {
        ObjectNode doc = JsonOutput.object()
                .put("format", JobReader.FORMAT)
                .put("job", plan.header().job())
                .put("jobHash", plan.header().jobHash())
                .put("status", plan.header().status().word())
                .put("currency", job.writing().currency().getCurrencyCode());
        doc.set("buyingList", DerivedNodes.buyingList(plan.derived().buyingList()));
        new DerivedNodes(
                        job,
                        new LengthWriter(job.writing().unit(), job.writing().decimal()))
                .putEstimates(doc, plan.derived().estimates());
        Reckoning bill = Reckoning.of(job, plan);
        if (bill != null) {
            TradeNodes.putBill(doc, bill, bill.perSet(job, plan));
        }
        ArrayNode used = doc.putArray("fromOnHand");
        usedFromOnHand(job, plan)
                .forEach((stock, quantity) ->
                        used.addObject().put("stock", stock).put("quantity", quantity));
        TradeNodes.put(doc, job, TradeSums.of(job, plan), BandLine.of(job, plan));
        doc.set("warnings", DerivedNodes.warnings(plan.derived().warnings()));
        return JsonOutput.pretty(doc);
    }

    private static Map<String, Integer> usedFromOnHand(Job job, CuttingPlan plan) {
        Set<String> owned = job.onHand().stream().map(StockItem::id).collect(Collectors.toSet());
        Map<String, Integer> used = new TreeMap<>();
        for (Layout layout : plan.layouts()) {
            if (owned.contains(layout.stock())) {
                used.merge(layout.stock(), layout.repeat(), Integer::sum);
            }
        }
        return used;
    }
}
