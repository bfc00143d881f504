package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.UsualGang;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.CutFrom;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

/** Parts as they stand in documents. */
final class PartNodes {

    private PartNodes() {}

    static ObjectNode part(Job job, Part part, LengthWriter lengths) {
        ObjectNode node = JsonOutput.object().put("id", part.id()).put("quantity", part.quantity());
        JobWriter.put(node, "length", part.length(), lengths);
        if (part.section() instanceof Section.Nominal nominal) {
            node.put("nominal", nominal.name());
        } else if (part.section() instanceof Section.Measured measured) {
            JobWriter.put(node, "width", measured.width(), lengths);
            JobWriter.put(node, "thickness", measured.thickness(), lengths);
        }
        node.put("material", part.material());
        if (part.grain() != null) {
            node.put("grain", part.grain().word());
        }
        making(node, part.making(), lengths);
        Integer gang = gang(job, part);
        if (gang != null) {
            node.put("gang", gang);
        }
        if (part.group() != null) {
            node.putObject("group")
                    .put("name", part.group())
                    .put("rule", part.selection().binding().word());
        }
        if (part.selection().goodFaceOnly()) {
            node.put("showFaces", part.selection().showFaces().word());
        }
        if (!part.selection().grades().isEmpty()) {
            part.selection().grades().forEach(node.putArray("grades")::add);
        }
        CutFrom chosen = part.selection().cutFrom();
        if (chosen != null) {
            ObjectNode place = node.putObject("cutFrom").put("stock", chosen.stock());
            JobWriter.put(place, "from", chosen.from(), lengths);
            JobWriter.put(place, "edge", chosen.edge(), lengths);
        }
        node.put("class", part.woodClass().word()).put("spares", part.spares());
        if (part.note() != null) {
            node.put("note", part.note());
        }
        if (!part.shaping().tolerance().isZero()) {
            JobWriter.put(node, "tolerance", part.shaping().tolerance(), lengths);
        }
        if (!part.edging().isNone()) {
            ObjectNode edging = node.putObject("edging");
            JobWriter.put(edging, "start", part.edging().start(), lengths);
            JobWriter.put(edging, "end", part.edging().end(), lengths);
            JobWriter.put(edging, "edge", part.edging().edge(), lengths);
            JobWriter.put(edging, "farEdge", part.edging().farEdge(), lengths);
            JobWriter.put(edging, "over", part.edging().over(), lengths);
        }
        ShapingNodes.put(node, part.shaping(), lengths);
        return node;
    }

    /** How many are in a blank, where a reader would take the line's silence for another number; null where silence says it. */
    static @Nullable Integer gang(Job job, Part part) {
        if (!(part.making() instanceof Making.Milled milled)) {
            return null;
        }
        UsualGang usual = milled.gang() > 1 ? null : UsualGang.of(job, part);
        return milled.gang() > 1 || (usual != null && usual.parts() > 1) ? milled.gang() : null;
    }

    private static void making(ObjectNode node, Making making, LengthWriter lengths) {
        if (making instanceof Making.Milled milled) {
            node.put("allowance", milled.profile());
        } else if (making instanceof Making.GlueUp glueUp) {
            ObjectNode staves = node.putObject("make").put("as", Fields.GLUE_UP).putObject("staves");
            JobWriter.put(staves, "min", glueUp.minStave(), lengths);
            JobWriter.put(staves, "max", glueUp.maxStave(), lengths);
            if (glueUp.count() != null) {
                staves.put("count", glueUp.count());
            }
            staves.put("from", glueUp.from().word());
        } else if (making instanceof Making.Lamination lamination) {
            node.putObject("make").put("as", Fields.LAMINATION).put("plies", lamination.plies());
        }
    }
}
