package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.material.Weight;
import org.stockcutting.report.TradeSums;

/** Load, movement and notes as they stand in a buying list. Weights are rounded half up to a tenth; lengths are exact. */
final class TradeNodes {

    private static final int DECIMALS = 1;

    private TradeNodes() {}

    static void put(ObjectNode doc, Job job, TradeSums sums) {
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
        doc.set("notes", DerivedNodes.warnings(sums.notes()));
    }

    private static void weight(ObjectNode node, @Nullable Weight weight) {
        if (weight != null) {
            node.put("pounds", weight.inPounds(DECIMALS).toPlainString())
                    .put("kilograms", weight.inKilograms(DECIMALS).toPlainString());
        }
    }
}
