package org.stockcutting.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthWriter;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.plan.SequenceStep;

/** Steps of the cut sequence, as they stand in documents. */
final class StepNodes {

    private final LengthWriter lengths;
    private final Set<String> laminations;

    StepNodes(Job job, LengthWriter lengths) {
        this.lengths = lengths;
        this.laminations = job.parts().stream()
                .filter(p -> p.making() instanceof Making.Lamination)
                .map(Part::id)
                .collect(Collectors.toSet());
    }

    ObjectNode step(SequenceStep step) {
        ObjectNode node = JsonOutput.object()
                .put("step", step.step())
                .put("kind", step.kind().word());
        if (step.setUp() != null) {
            ObjectNode setUp =
                    node.putObject("setUp").put("machine", step.setUp().machine());
            JobWriter.put(setUp, "stop", step.setUp().stop(), lengths);
        }
        PlanWriter.putText(node, "board", step.board());
        if (step.cut() != null) {
            node.set("cut", cut(step.cut()));
        }
        put(node, step.piece());
        if (step.behind() != null) {
            put(node.putObject("behind"), step.behind());
        }
        PlanWriter.putText(node, "caution", step.caution());
        PlanWriter.putText(node, "reason", step.reason());
        if (step.shape() != null) {
            node.set("shape", shape(step.shape()));
        }
        return node;
    }

    private ObjectNode cut(SequenceStep.SawCut cut) {
        ObjectNode node = JsonOutput.object().put("direction", cut.direction().word());
        node.set("on", wood(cut.on()));
        JobWriter.put(node, "reading", cut.reading(), lengths);
        JobWriter.put(node, "to", cut.to(), lengths);
        if (cut.left() != null) {
            node.set("left", wood(cut.left()));
        }
        JobWriter.put(node, "slack", cut.slack(), lengths);
        return node;
    }

    private ObjectNode shape(SequenceStep.Shape shape) {
        ObjectNode node = JsonOutput.object();
        PlanWriter.putText(node, "purpose", shape.purpose());
        PlanWriter.putText(
                node, "hand", shape.hand() == null ? null : shape.hand().word());
        JobWriter.put(node, "fromEnd", shape.fromEnd(), lengths);
        JobWriter.put(node, "fromEdge", shape.fromEdge(), lengths);
        JobWriter.put(node, "bore", shape.bore(), lengths);
        JobWriter.put(node, "depth", shape.depth(), lengths);
        JobWriter.put(node, "foot", shape.foot(), lengths);
        PlanWriter.putText(
                node, "faces", shape.faces() == null ? null : shape.faces().word());
        return node;
    }

    private ObjectNode wood(SequenceStep.Wood wood) {
        ObjectNode node = JsonOutput.object();
        JobWriter.put(node, "x", wood.x(), lengths);
        JobWriter.put(node, "y", wood.y(), lengths);
        JobWriter.put(node, "length", wood.length(), lengths);
        JobWriter.put(node, "width", wood.width(), lengths);
        return node;
    }

    private void put(ObjectNode node, SequenceStep.@Nullable Piece piece) {
        if (piece == null) {
            return;
        }
        node.put("part", piece.part()).put("number", piece.number());
        if (piece.member() != null) {
            node.put(laminations.contains(piece.part()) ? "ply" : "stave", piece.member());
        }
    }
}
