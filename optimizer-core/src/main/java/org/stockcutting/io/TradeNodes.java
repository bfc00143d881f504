package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Weight;
import org.stockcutting.report.BandLine;
import org.stockcutting.report.Reckoning;
import org.stockcutting.report.TradeSums;
import org.stockcutting.stock.Money;

/** Load, movement and notes as they stand in a buying list. Weights are rounded half up to a tenth; lengths are exact. */
final class TradeNodes {

    private static final int DECIMALS = 1;

    private TradeNodes() {}

    static void put(ObjectNode doc, Job job, TradeSums sums, List<BandLine> bands) {
        LengthWriter lengths =
                new LengthWriter(job.writing().unit(), job.writing().decimal());
        ObjectNode load = doc.putObject("load");
        weight(load, sums.load());
        JobWriter.put(load, "longest", sums.longest(), lengths);
        ArrayNode lines = load.putArray("lines");
        for (TradeSums.Weighed line : sums.weights()) {
            ObjectNode node = lines.addObject().put("stock", line.stock());
            weight(node, line.all());
            PlanWriter.putText(node, "reckonedAs", line.reckonedAs());
        }
        ArrayNode movements = doc.putArray("movement");
        for (TradeSums.Movement movement : sums.movements()) {
            ObjectNode node = movements.addObject().put("part", movement.part());
            JobWriter.put(node, "across", movement.across(), lengths);
            JobWriter.put(node, "change", movement.change(), lengths);
            node.put("coefficient", movement.coefficient().toPlainString())
                    .put("fromMoisture", job.terms().seasons().driest().toPlainString())
                    .put("toMoisture", job.terms().seasons().dampest().toPlainString())
                    .put("reckonedAs", movement.reckonedAs());
        }
        ArrayNode edging = doc.putArray("edging");
        for (BandLine line : bands) {
            ObjectNode node = edging.addObject().put("material", line.material());
            JobWriter.put(node, "thickness", line.thickness(), lengths);
            JobWriter.put(node, "partThickness", line.partThickness(), lengths);
            node.put("strips", line.strips());
            JobWriter.put(node, "length", line.length(), lengths);
            JobWriter.put(node, "longest", line.longest(), lengths);
        }
        doc.set("notes", DerivedNodes.warnings(sums.notes()));
    }

    /** The bill: the sum of the material first, what is paid last. */
    static void putBill(ObjectNode doc, Reckoning bill, @Nullable Money perSet) {
        doc.put("material", text(bill.material()));
        if (bill.yardCuts() != null) {
            doc.putObject("yardCuts").put("cuts", bill.cuts()).put("total", text(bill.yardCuts()));
        }
        if (bill.delivery() != null) {
            doc.put("delivery", text(bill.delivery()));
        }
        if (bill.tax() != null) {
            doc.put("tax", text(bill.tax()));
        }
        doc.put("total", text(bill.total()));
        if (perSet != null) {
            doc.put("perSet", text(perSet));
        }
    }

    private static String text(Money money) {
        return money.amount().toPlainString();
    }

    private static void weight(ObjectNode node, @Nullable Weight weight) {
        if (weight != null) {
            node.put("pounds", weight.inPounds(DECIMALS).toPlainString())
                    .put("kilograms", weight.inKilograms(DECIMALS).toPlainString());
        }
    }
}
