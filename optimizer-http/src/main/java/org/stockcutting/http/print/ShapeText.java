package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.length.Length;
import org.stockcutting.part.Taper;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.SequenceStep.Shape;
import org.stockcutting.plan.StepKind;

/** What is marked, bored or tapered on a piece, in words. */
public final class ShapeText {

    private final PrintedLengths lengths;

    /** Words with lengths printed this way. */
    public ShapeText(PrintedLengths lengths) {
        this.lengths = lengths;
    }

    /** What the saw and its stop are set to for mitred ends; the angle stands behind the machine's name. */
    public static String mitre(SetUp setUp, PrintedLengths lengths) {
        return "Set the saw to " + setUp.machine().replace("mitre-", "") + " degrees and the stop to "
                + lengths.part(setUp.stop()) + ", from long point to long point";
    }

    /** True for a mark that only the work can give. */
    public static boolean isFromTheWork(SequenceStep step) {
        Shape shape = step.shape();
        return shape != null && Shape.FROM_THE_WORK.equals(shape.purpose());
    }

    /** What stands over steps of this kind, without a colon behind it. */
    public String heading(SequenceStep step) {
        SetUp setUp = step.setUp();
        return switch (step.kind()) {
            case BORE ->
                "Put the " + (setUp == null ? "" : lengths.part(setUp.stop()) + " ") + "bit into the drill and bore";
            case TAPER -> "Taper, now that everything is marked and bored";
            default -> {
                if (setUp != null) {
                    yield "Set the marking gauge to " + lengths.part(setUp.stop())
                            + ", its fence against the face edge";
                }
                yield isFromTheWork(step)
                        ? "Mark the length from the work once it stands, and cut to the mark"
                        : "Put these lengths on a story stick and mark them from the reference end";
            }
        };
    }

    /** The reading that a step is made at; empty where there is none. */
    public String reading(SequenceStep step) {
        Shape shape = step.shape();
        Length reading = shape == null ? null : shape.fromEnd() == null ? shape.fromEdge() : shape.fromEnd();
        return reading == null ? "" : lengths.position(reading);
    }

    /** What it is for, which hand, how deep. */
    public String what(Shape shape) {
        List<String> words = new ArrayList<>();
        if (shape.purpose() != null && !Shape.FROM_THE_WORK.equals(shape.purpose())) {
            words.add(Clip.to(shape.purpose(), 40));
        }
        if (shape.hand() != null) {
            words.add(shape.hand().word());
        }
        if (shape.bore() != null && shape.fromEdge() != null) {
            words.add(lengths.position(shape.fromEdge()) + " from the edge");
            words.add(shape.depth() == null ? "through" : lengths.part(shape.depth()) + " deep");
        } else if (shape.depth() != null) {
            words.add(lengths.part(shape.depth()) + " deep");
        }
        if (shape.foot() != null && shape.faces() != null) {
            words.add("to a foot of " + lengths.part(shape.foot()));
            words.add(faces(shape.faces()));
        }
        return String.join(", ", words);
    }

    private static String faces(Taper.Faces faces) {
        return switch (faces) {
            case ONE -> "one face";
            case INSIDE_TWO -> "the two inside faces";
            case FOUR -> "all four faces";
        };
    }

    /** True for steps that work on pieces which have their size already. */
    public static boolean isShaping(SequenceStep step) {
        return step.kind() == StepKind.MARK || step.kind() == StepKind.BORE || step.kind() == StepKind.TAPER;
    }
}
