package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Ends;
import org.stockcutting.part.Mark;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;

/** What is done to a part once it has its size, as it stands in documents. */
final class ShapingNodes {

    private ShapingNodes() {}

    static void put(ObjectNode part, Shaping shaping, LengthWriter lengths) {
        Taper taper = shaping.taper();
        if (taper != null) {
            ObjectNode node = part.putObject("taper");
            JobWriter.put(node, "start", taper.start(), lengths);
            JobWriter.put(node, "foot", taper.foot(), lengths);
            node.put("faces", taper.faces().word());
            if (taper.nest()) {
                node.put("nest", true);
            }
        }
        Ends ends = shaping.ends();
        if (ends != null) {
            ObjectNode node = part.putObject("ends").put("angle", ends.angle().word());
            if (ends.stick() > 1) {
                node.put("stick", ends.stick());
            }
            if (ends.flip()) {
                node.put("flip", true);
            }
        }
        if (!shaping.marks().isEmpty()) {
            ArrayNode marks = part.putArray("marks");
            for (Mark mark : shaping.marks()) {
                ObjectNode node = marks.addObject().put("purpose", mark.purpose());
                JobWriter.put(node, "fromEnd", mark.fromEnd(), lengths);
                JobWriter.put(node, "fromEdge", mark.fromEdge(), lengths);
                JobWriter.put(node, "bore", mark.bore(), lengths);
                JobWriter.put(node, "depth", mark.depth(), lengths);
            }
        }
        if (shaping.fit() != Shaping.Fit.TO_SIZE) {
            part.put("fit", shaping.fit().word());
        }
        if (shaping.hand() != Shaping.Hand.NONE) {
            part.put("hand", shaping.hand().word());
        }
    }
}
