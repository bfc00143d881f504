package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;

/** Reads the layouts of a plan. */
final class LayoutReader {

    private final Reading reading;
    private final Map<String, Integer> gangs = new HashMap<>();

    LayoutReader(Job job, Reading reading) {
        this.reading = reading;
        job.parts().forEach(part -> gangs.put(part.id(), part.gang()));
    }

    List<Layout> read(DocObject doc) {
        List<Layout> layouts = new ArrayList<>();
        for (DocObject node : doc.objects("layouts")) {
            if (node != null) {
                layouts.add(layout(node));
            }
        }
        return layouts;
    }

    private Layout layout(DocObject node) {
        List<PlacedPiece> pieces = new ArrayList<>();
        for (DocObject piece : node.objects("pieces")) {
            if (piece != null) {
                pieces.add(piece(piece));
            }
        }
        JsonNode cuts = node.any("cuts");
        List<Layout.LeftOver> offcuts = new ArrayList<>();
        for (DocObject left : node.objects("offcuts")) {
            if (left != null) {
                offcuts.add(leftOver(left));
            }
        }
        return new Layout(
                Or.of(node.text("stock"), Or.NAME),
                Or.of(node.integer("repeat"), 1),
                Or.size(node.length("length")),
                Or.size(node.length("width")),
                Or.size(node.length("thickness")),
                pieces,
                cuts == null ? CutNode.RestLeaf.OFFCUT : cuts(cuts, node.pointer("cuts")),
                offcuts);
    }

    private PlacedPiece piece(DocObject node) {
        List<Integer> staves = node.integers("staves");
        List<Integer> plies = node.integers("plies");
        if (node.has("staves") && node.has("plies")) {
            reading.faults()
                    .add(
                            node.pointer("plies"),
                            FaultCode.CONFLICT,
                            "staves and plies",
                            "one of them",
                            "A piece is a stave of a panel or a ply of a lamination, not both; keep one of the two.");
        }
        String part = Or.of(node.text("part"), Or.NAME);
        Integer gang = node.integer("gang");
        int wanted = gangs.getOrDefault(part, 1);
        if (gang != null && gang != wanted) {
            reading.faults()
                    .add(
                            node.pointer("gang"),
                            FaultCode.INCONSISTENT,
                            gang.toString(),
                            Integer.toString(wanted),
                            "The job has " + wanted + " of " + part + " in one blank, this says " + gang + ".");
        }
        return new PlacedPiece(
                part,
                node.integers("numbers"),
                staves.isEmpty() ? plies : staves,
                Or.zero(node.length("x")),
                Or.zero(node.length("y")),
                Or.size(node.length("length")),
                Or.size(node.length("width")),
                Or.of(node.bool("turned"), false));
    }

    private static Layout.LeftOver leftOver(DocObject node) {
        return new Layout.LeftOver(
                Or.zero(node.length("x")),
                Or.zero(node.length("y")),
                Or.zero(node.length("length")),
                Or.zero(node.length("width")),
                Or.of(node.bool("keep"), false));
    }

    private CutNode cuts(JsonNode node, String pointer) {
        if (node.isTextual()) {
            return leaf(node.textValue());
        }
        if (node.isObject()) {
            return tree(new DocObject(reading, (ObjectNode) node, pointer, PlanFields.CUT_NODE));
        }
        reading.faults()
                .add(
                        pointer,
                        FaultCode.WRONG_TYPE,
                        Faults.shown(node),
                        FieldType.CUTS.wanted(),
                        "This is " + Faults.shown(node) + "; give " + FieldType.CUTS.wanted() + ".");
        return CutNode.RestLeaf.OFFCUT;
    }

    private static CutNode leaf(String text) {
        for (CutNode.RestLeaf rest : CutNode.RestLeaf.values()) {
            if (rest.word().equals(text)) {
                return rest;
            }
        }
        return new CutNode.PartLeaf(text);
    }

    private CutNode tree(DocObject node) {
        Direction cut = Or.of(node.word("cut", Direction.values(), Direction::word), Direction.CROSSCUT);
        List<CutNode.Slot> slots = new ArrayList<>();
        List<JsonNode> kerfs = node.list("kerf");
        for (int i = 0; i < kerfs.size(); i++) {
            CutNode.Slot slot = slot(node, "kerf/" + i, kerfs.get(i));
            if (slot != null) {
                slots.add(slot);
            }
        }
        List<CutNode> pieces = new ArrayList<>();
        List<JsonNode> between = node.list("pieces");
        for (int i = 0; i < between.size(); i++) {
            pieces.add(cuts(between.get(i), node.pointer("pieces") + "/" + i));
        }
        if (node.has("kerf") && node.has("pieces") && between.size() != kerfs.size() + 1) {
            reading.faults()
                    .add(
                            node.pointer("pieces"),
                            FaultCode.INCONSISTENT,
                            between.size() + " pieces",
                            (kerfs.size() + 1) + " pieces",
                            kerfs.size() + " cuts leave " + (kerfs.size() + 1) + " pieces, but " + between.size()
                                    + " are listed; name what lies before, between and behind the cuts.");
        }
        return pieces.size() == slots.size() + 1 ? new CutNode.Cuts(cut, slots, pieces) : CutNode.RestLeaf.OFFCUT;
    }

    private CutNode.@Nullable Slot slot(DocObject node, String below, JsonNode pair) {
        if (!pair.isArray() || pair.size() != 2) {
            node.fault(below, FaultCode.WRONG_TYPE, pair, "a list [from, to] of two lengths");
            return null;
        }
        Length from = node.lengthAt(below + "/0", pair.get(0));
        Length to = node.lengthAt(below + "/1", pair.get(1));
        return from == null || to == null ? null : new CutNode.Slot(from, to);
    }
}
