package org.stockcutting.io;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.part.Shaping;
import org.stockcutting.part.Taper;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.StepKind;

/** Reads the cut sequence of a plan document. */
final class StepReader {

    /** Stands in for wood that could not be read. */
    private static final SequenceStep.Wood NO_WOOD =
            new SequenceStep.Wood(Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO);

    private StepReader() {}

    static List<SequenceStep> steps(DocObject doc) {
        List<SequenceStep> steps = new ArrayList<>();
        for (DocObject node : doc.objects("cutSequence")) {
            if (node != null) {
                steps.add(new SequenceStep(
                        Or.of(node.integer("step"), 0),
                        Or.of(node.word("kind", StepKind.values(), StepKind::word), StepKind.TRIM),
                        setUp(node.object("setUp")),
                        node.text("board"),
                        cut(node.object("cut")),
                        piece(node),
                        piece(node.object("behind")),
                        node.text("caution"),
                        node.text("reason"),
                        shape(node.object("shape"))));
            }
        }
        return steps;
    }

    private static SequenceStep.@Nullable Shape shape(@Nullable DocObject node) {
        return node == null
                ? null
                : new SequenceStep.Shape(
                        node.text("purpose"),
                        node.word("hand", Shaping.Hand.values(), Shaping.Hand::word),
                        node.length("fromEnd"),
                        node.length("fromEdge"),
                        node.length("bore"),
                        node.length("depth"),
                        node.length("foot"),
                        node.word("faces", Taper.Faces.values(), Taper.Faces::word));
    }

    private static SequenceStep.@Nullable SetUp setUp(@Nullable DocObject node) {
        return node == null
                ? null
                : new SequenceStep.SetUp(Or.of(node.word("machine"), Or.NAME), Or.zero(node.length("stop")));
    }

    private static SequenceStep.@Nullable SawCut cut(@Nullable DocObject node) {
        return node == null
                ? null
                : new SequenceStep.SawCut(
                        Or.of(node.word("direction", Direction.values(), Direction::word), Direction.CROSSCUT),
                        Or.of(wood(node.object("on")), NO_WOOD),
                        Or.zero(node.length("reading")),
                        node.length("to"),
                        wood(node.object("left")),
                        Or.zero(node.length("slack")));
    }

    private static SequenceStep.@Nullable Wood wood(@Nullable DocObject node) {
        return node == null
                ? null
                : new SequenceStep.Wood(
                        Or.zero(node.length("x")),
                        Or.zero(node.length("y")),
                        Or.zero(node.length("length")),
                        Or.zero(node.length("width")));
    }

    private static SequenceStep.@Nullable Piece piece(@Nullable DocObject node) {
        String part = node == null ? null : node.text("part");
        if (node == null || part == null) {
            return null;
        }
        Integer stave = node.integer("stave");
        return new SequenceStep.Piece(
                part, Or.of(node.integer("number"), 0), stave == null ? node.integer("ply") : stave);
    }
}
