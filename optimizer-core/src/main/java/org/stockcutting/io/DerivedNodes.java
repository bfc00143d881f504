package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.length.VolumeWriter;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.LongestOffcut;
import org.stockcutting.plan.NearMiss;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.plan.Warning;
import org.stockcutting.plan.WholeSets;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Money;

/** What follows from a plan, as it stands in documents. */
final class DerivedNodes {

    private final LengthWriter lengths;
    private final VolumeWriter volumes;
    private final StockNodes stock;
    private final StepNodes stepNodes;

    DerivedNodes(Job job, LengthWriter lengths) {
        this.lengths = lengths;
        this.volumes = new VolumeWriter(job.writing().unit());
        this.stock = new StockNodes(lengths, job.writing().decimal());
        this.stepNodes = new StepNodes(job, lengths);
    }

    void put(ObjectNode doc, Derived derived) {
        doc.set("buyingList", buyingList(derived.buyingList()));
        ArrayNode offcuts = doc.putArray("offcuts");
        derived.offcuts().forEach(offcut -> offcuts.add(stock.offcut(offcut)));
        ArrayNode steps = doc.putArray("cutSequence");
        derived.cutSequence().forEach(step -> steps.add(stepNodes.step(step)));
        doc.put("setUps", derived.setUps());
        doc.set("yield", figures(derived.yield()));
        doc.set("warnings", warnings(derived.warnings()));
        LongestOffcut longest = derived.longestOffcut();
        if (longest != null) {
            doc.putObject("longestOffcut")
                    .put("length", lengths.exact(longest.length()))
                    .put("atMost", lengths.exact(longest.atMost()))
                    .put("certified", longest.certified());
        }
        if (derived.wholeSets() != null) {
            doc.set("wholeSets", wholeSets(derived.wholeSets()));
        }
        if (!derived.nearMisses().isEmpty()) {
            doc.set("nearMisses", nearMisses(derived.nearMisses()));
        }
        if (!derived.tradeOff().rows().isEmpty()) {
            ArrayNode rows = doc.putArray("tradeOff");
            for (TradeOff.Row row : derived.tradeOff().rows()) {
                rows.addObject()
                        .put("cost", row.cost().amount().toPlainString())
                        .put("setUps", row.setUps())
                        .put("chosen", row.chosen());
            }
        }
        putEstimates(doc, derived.estimates());
    }

    void putEstimates(ObjectNode doc, List<Estimate> estimates) {
        if (estimates.isEmpty()) {
            return;
        }
        ArrayNode list = doc.putArray("estimates");
        for (Estimate estimate : estimates) {
            ObjectNode node = list.addObject().put("stock", estimate.stock());
            ArrayNode parts = node.putArray("parts");
            estimate.parts()
                    .forEach(served ->
                            parts.addObject().put("part", served.part()).put("quantity", served.quantity()));
            node.put("net", volumes.exact(estimate.net()))
                    .put("yield", estimate.yield().toPlainString())
                    .put("volume", volumes.exact(estimate.volume()))
                    .put("boardFeet", estimate.boardFeet().toPlainString())
                    .put("boards", estimate.boards());
            putMoney(node, estimate.cost());
            Estimate.Sure sure = estimate.sure();
            ObjectNode enough = node.putObject("sure")
                    .put("chance", sure.chance().toPlainString())
                    .put("boardFeet", sure.boardFeet().toPlainString())
                    .put("boards", sure.boards());
            putMoney(enough, sure.cost());
            if (!estimate.atLeast().isEmpty()) {
                ArrayNode rows = node.putArray("atLeast");
                estimate.atLeast()
                        .forEach(row -> rows.addObject()
                                .put("boards", row.boards())
                                .put("width", lengths.exact(row.width()))
                                .put("length", lengths.exact(row.length())));
            }
            node.put("trials", estimate.trials()).put("wood", estimate.wood());
        }
    }

    private static void putMoney(ObjectNode node, @Nullable Money cost) {
        if (cost != null) {
            node.put("cost", cost.amount().toPlainString());
        }
    }

    static ArrayNode buyingList(List<BuyingLine> lines) {
        ArrayNode list = JsonOutput.list();
        for (BuyingLine line : lines) {
            ObjectNode node = list.addObject().put("stock", line.stock()).put("quantity", line.quantity());
            if (line.price() != null) {
                node.put("price", line.price().amount().toPlainString());
            }
            if (line.total() != null) {
                node.put("total", line.total().amount().toPlainString());
            }
            if (line.boardFeet() != null) {
                node.put("boardFeet", line.boardFeet().toPlainString());
            }
            lot(node, line);
        }
        return list;
    }

    /** Nothing where pieces are sold singly at one price and all cut. */
    private static void lot(ObjectNode node, BuyingLine line) {
        BuyingLine.Lot lot = line.lot();
        if (lot.used() != line.quantity()) {
            node.put("used", lot.used());
        }
        if (lot.pack() != 1) {
            node.put("pack", lot.pack());
        }
        if (lot.breakFrom() != 0) {
            node.put("breakFrom", lot.breakFrom());
        }
        if (lot.more() != 0) {
            node.put("more", lot.more());
        }
    }

    static ArrayNode warnings(List<Warning> warnings) {
        ArrayNode list = JsonOutput.list();
        for (Warning w : warnings) {
            list.addObject().put("code", w.code()).put("pointer", w.pointer()).put("text", w.text());
        }
        return list;
    }

    private static ObjectNode wholeSets(WholeSets sets) {
        ObjectNode node = JsonOutput.object().put("complete", sets.complete()).put("atMost", sets.atMost());
        ArrayNode missing = node.putArray("missing");
        sets.missing()
                .forEach(lack -> missing.addObject().put("part", lack.part()).put("quantity", lack.quantity()));
        return node;
    }

    private ArrayNode nearMisses(List<NearMiss> misses) {
        ArrayNode list = JsonOutput.list();
        for (NearMiss miss : misses) {
            ObjectNode node = list.addObject()
                    .put("part", miss.part())
                    .put("side", miss.side().word())
                    .put("by", lengths.exact(miss.by()))
                    .put("places", miss.places())
                    .put("boards", miss.boards())
                    .put("sheets", miss.sheets());
            if (miss.saves() != null) {
                node.put("saves", miss.saves().amount().toPlainString());
            }
            node.put("smallest", miss.smallest());
        }
        return list;
    }

    ObjectNode figures(YieldFigures yield) {
        return JsonOutput.object()
                .put("used", volumes.exact(yield.used()))
                .put("parts", volumes.exact(yield.parts()))
                .put("allowance", volumes.exact(yield.allowance()))
                .put("kerf", volumes.exact(yield.kerf()))
                .put("trim", volumes.exact(yield.trim()))
                .put("zones", volumes.exact(yield.zones()))
                .put("offcutsKept", volumes.exact(yield.offcutsKept()))
                .put("waste", volumes.exact(yield.waste()))
                .put("ratio", yield.ratio().toPlainString());
    }
}
