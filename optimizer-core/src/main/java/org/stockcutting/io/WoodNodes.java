package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.WoodModel;
import org.stockcutting.job.WoodRules;
import org.stockcutting.length.LengthWriter;

/** Writes the object {@code wood}. */
final class WoodNodes {

    private WoodNodes() {}

    static ObjectNode wood(WoodRules wood, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object();
        node.put("confidence", wood.confidence().toPlainString()).put("trials", wood.trials());
        ArrayNode models = node.putArray("models");
        for (WoodModel model : wood.models()) {
            ObjectNode entry = models.addObject().put("material", model.material());
            if (model.grade() != null) {
                entry.put("grade", model.grade());
            }
            JobWriter.put(entry, "clearRun", model.clearRun(), lengths);
            JobWriter.put(entry, "zone", model.zone(), lengths);
            JobWriter.put(entry, "endCheck", model.endCheck(), lengths);
            put(entry, "unusableBoards", model.unusableBoards());
            put(entry, "tightKnots", model.tightKnots());
            put(entry, "blemishes", model.blemishes());
        }
        return node;
    }

    private static void put(ObjectNode node, String name, @Nullable BigDecimal share) {
        if (share != null) {
            node.put(name, share.toPlainString());
        }
    }
}
