package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;

/** Layouts as they stand in plan documents. */
final class LayoutNodes {

    private final LengthWriter lengths;
    private final Set<String> laminations;
    private final Map<String, Integer> gangs = new HashMap<>();

    LayoutNodes(Job job, LengthWriter lengths) {
        this.lengths = lengths;
        this.laminations = job.parts().stream()
                .filter(p -> p.making() instanceof Making.Lamination)
                .map(Part::id)
                .collect(Collectors.toSet());
        job.parts().forEach(part -> gangs.put(part.id(), part.gang()));
    }

    ObjectNode layout(Layout layout) {
        ObjectNode node = JsonOutput.object().put("stock", layout.stock()).put("repeat", layout.repeat());
        JobWriter.put(node, "length", layout.length(), lengths);
        JobWriter.put(node, "width", layout.width(), lengths);
        JobWriter.put(node, "thickness", layout.thickness(), lengths);
        ArrayNode pieces = node.putArray("pieces");
        layout.pieces().forEach(piece -> pieces.add(piece(piece)));
        node.set("cuts", cuts(layout.cuts()));
        ArrayNode offcuts = node.putArray("offcuts");
        for (Layout.LeftOver left : layout.offcuts()) {
            ObjectNode entry = offcuts.addObject();
            JobWriter.put(entry, "x", left.x(), lengths);
            JobWriter.put(entry, "y", left.y(), lengths);
            JobWriter.put(entry, "length", left.length(), lengths);
            JobWriter.put(entry, "width", left.width(), lengths);
            entry.put("keep", left.keep());
        }
        return node;
    }

    private ObjectNode piece(PlacedPiece piece) {
        ObjectNode node = JsonOutput.object().put("part", piece.part());
        ArrayNode numbers = node.putArray("numbers");
        piece.numbers().forEach(numbers::add);
        Integer gang = gangs.get(piece.part());
        if (gang != null && gang > 1) {
            node.put("gang", gang);
        }
        if (!piece.members().isEmpty()) {
            ArrayNode members = node.putArray(laminations.contains(piece.part()) ? "plies" : "staves");
            piece.members().forEach(members::add);
        }
        JobWriter.put(node, "x", piece.x(), lengths);
        JobWriter.put(node, "y", piece.y(), lengths);
        JobWriter.put(node, "length", piece.length(), lengths);
        JobWriter.put(node, "width", piece.width(), lengths);
        return node.put("turned", piece.turned());
    }

    private JsonNode cuts(CutNode cuts) {
        if (cuts instanceof CutNode.PartLeaf leaf) {
            return TextNode.valueOf(leaf.part());
        }
        if (cuts instanceof CutNode.RestLeaf leaf) {
            return TextNode.valueOf(leaf.word());
        }
        CutNode.Cuts node = (CutNode.Cuts) cuts;
        ObjectNode object = JsonOutput.object().put("cut", node.cut().word());
        ArrayNode kerf = object.putArray("kerf");
        for (CutNode.Slot slot : node.slots()) {
            kerf.addArray().add(lengths.exact(slot.from())).add(lengths.exact(slot.to()));
        }
        ArrayNode pieces = object.putArray("pieces");
        node.pieces().forEach(piece -> pieces.add(cuts(piece)));
        return object;
    }
}
