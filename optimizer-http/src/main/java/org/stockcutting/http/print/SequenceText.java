package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.PieceNames;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.StepKind;

/** The cut sequence for somebody at the machines: what one setting of a stop, fence or planer can do stands under one line. */
final class SequenceText {

    private static final int NAME = 30;

    private final PrintedLengths lengths;
    private final PieceNames names;
    private final ShapeText shapes;
    private final Map<String, String> memberWords = new HashMap<>();
    private final Map<String, SetUp> standing = new HashMap<>();
    private final Map<String, String> notes = new LinkedHashMap<>();

    SequenceText(Job job, PrintedLengths lengths) {
        this.lengths = lengths;
        this.names = new PieceNames(job);
        this.shapes = new ShapeText(lengths);
        for (Part part : job.parts()) {
            memberWords.put(part.id(), part.making() instanceof Making.Lamination ? "ply" : "stave");
        }
    }

    void print(List<SequenceStep> steps, int setUps, TextPage page) {
        if (steps.isEmpty()) {
            return;
        }
        page.gap()
                .line("Cut sequence: " + PlanText.counted(steps.size(), "step") + ", "
                        + PlanText.counted(setUps, "set-up"));
        page.wrapped(
                "Readings run from the origin end or edge of the board. A stop is a block in front of the blade that lets the piece lie"
                        + " free; the fence is never the stop of a crosscut. \"Spare\" is what may still be lost of the wood in hand.",
                "");
        int from = 0;
        while (from < steps.size()) {
            int to = from + 1;
            while (to < steps.size() && isSameGroup(steps.get(from), steps.get(to))) {
                to++;
            }
            group(steps.subList(from, to), page);
            from = to;
        }
        if (!notes.isEmpty()) {
            page.gap().line("Notes to the steps");
            notes.forEach((text, mark) -> page.wrapped("  " + mark + "  " + text, "     "));
        }
    }

    private static boolean isSameGroup(SequenceStep a, SequenceStep b) {
        return Objects.equals(a.setUp(), b.setUp())
                && (a.setUp() != null || a.kind() == b.kind())
                && (a.cut() == null) == (b.cut() == null)
                && ShapeText.isFromTheWork(a) == ShapeText.isFromTheWork(b);
    }

    private void group(List<SequenceStep> steps, TextPage page) {
        page.gap().line(heading(steps.get(0)));
        if (steps.get(0).kind() != StepKind.REST) {
            page.table(
                    List.of(true, false, true, false, true, true, false),
                    steps.get(0).cut() == null ? worked(steps) : sawn(steps));
        }
    }

    private String heading(SequenceStep step) {
        SetUp setUp = step.setUp();
        if (ShapeText.isShaping(step)) {
            return shapes.heading(step) + ":";
        }
        if (setUp == null) {
            return switch (step.kind()) {
                case TRIM -> "Square the ends and edges, along a drawn line:";
                case ROUGH_CROSSCUT -> "Cut roughly to length, along a drawn line:";
                case JOINT -> "Joint one face and one edge:";
                case REST -> "Let the wood rest, a day at least, until it moves no more.";
                case GLUE -> "Glue up:";
                case RIP -> "Rip along a drawn line:";
                default -> "Cut along a drawn line:";
            };
        }
        boolean stays = setUp.equals(standing.put(setUp.machine(), setUp));
        String what = switch (setUp.machine()) {
            case "rip" -> "fence";
            case "planer" -> "planer";
            default -> "stop";
        };
        String stop = lengths.part(setUp.stop());
        return stays ? "The " + what + " stays at " + stop + ":" : "Set the " + what + " to " + stop + ":";
    }

    private List<List<String>> sawn(List<SequenceStep> steps) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("step", "board", "cut at", "makes", "in hand", "spare", "note"));
        for (SequenceStep step : steps) {
            SawCut cut = Objects.requireNonNull(step.cut());
            SequenceStep.Wood left = cut.left();
            // A trim is read where the good wood begins, every other cut where the piece ends.
            boolean trimsStart = step.kind() == StepKind.TRIM && left != null && startsBehind(left, cut);
            Length reading = trimsStart && cut.to() != null ? cut.to() : cut.reading();
            rows.add(List.of(
                    Integer.toString(step.step()),
                    board(step.board()),
                    lengths.position(reading),
                    makes(step),
                    left == null ? "-" : lengths.gap(left.length()) + " x " + lengths.gap(left.width()),
                    lengths.gap(cut.slack()),
                    marks(step)));
        }
        return rows;
    }

    private static boolean startsBehind(SequenceStep.Wood left, SawCut cut) {
        return left.x().equals(cut.to()) || left.y().equals(cut.to());
    }

    private String makes(SequenceStep step) {
        Piece piece = step.piece();
        Piece behind = step.behind();
        if (piece == null) {
            return "";
        }
        return name(step, piece) + (behind == null ? "" : " and " + name(step, behind));
    }

    private String name(SequenceStep step, Piece piece) {
        String name = Clip.to(piece.part(), NAME) + " #" + PieceNames.joined(names.numbers(step, piece));
        return piece.member() == null ? name : name + " " + memberWord(piece.part()) + " " + piece.member();
    }

    private String memberWord(String part) {
        return memberWords.getOrDefault(part, "stave");
    }

    private static String board(@Nullable String board) {
        return board == null ? "" : Clip.to(board, NAME);
    }

    /** What is done to pieces without a saw: all copies of a part in one line. */
    private List<List<String>> worked(List<SequenceStep> steps) {
        List<List<String>> rows = new ArrayList<>();
        int from = 0;
        while (from < steps.size()) {
            int to = from + 1;
            while (to < steps.size() && isSameWork(steps.get(from), steps.get(to))) {
                to++;
            }
            rows.add(worked(steps.subList(from, to), marks(steps.get(from))));
            from = to;
        }
        return rows;
    }

    private static boolean isSameWork(SequenceStep a, SequenceStep b) {
        Piece one = a.piece();
        Piece other = b.piece();
        return one != null
                && other != null
                && one.part().equals(other.part())
                && (one.member() == null ? other.member() == null : one.number() == other.number())
                && Objects.equals(a.shape(), b.shape())
                && Objects.equals(a.caution(), b.caution())
                && Objects.equals(a.reason(), b.reason());
    }

    private List<String> worked(List<SequenceStep> steps, String marks) {
        int first = steps.get(0).step();
        int last = steps.get(steps.size() - 1).step();
        Piece piece = steps.get(0).piece();
        String what = "";
        if (piece != null && piece.member() == null) {
            what = Clip.to(piece.part(), NAME) + " #" + PieceNames.joined(numbers(steps, false));
        } else if (piece != null) {
            what = Clip.to(piece.part(), NAME) + " #" + piece.number() + " " + memberWord(piece.part()) + " "
                    + PieceNames.joined(numbers(steps, true));
        }
        SequenceStep.Shape shape = steps.get(0).shape();
        return List.of(
                first == last ? "" + first : first + "-" + last,
                what,
                shapes.reading(steps.get(0)),
                shape == null ? "" : shapes.what(shape),
                "",
                "",
                marks);
    }

    private List<Integer> numbers(List<SequenceStep> steps, boolean members) {
        List<Integer> numbers = new ArrayList<>();
        for (SequenceStep step : steps) {
            Piece piece = step.piece();
            Integer member = piece == null ? null : piece.member();
            if (piece != null && members && member != null) {
                numbers.add(member);
            } else if (piece != null) {
                numbers.addAll(names.numbers(step, piece));
            }
        }
        return numbers;
    }

    /** One letter for each different caution or reason; they are written out once, at the end. */
    private String marks(SequenceStep step) {
        StringBuilder marks = new StringBuilder();
        for (String text : Arrays.asList(step.caution(), step.reason())) {
            if (text != null) {
                marks.append(marks.length() == 0 ? "" : ",");
                marks.append(notes.computeIfAbsent(text, t -> letters(notes.size())));
            }
        }
        return marks.toString();
    }

    /** 0 is a, 25 is z, 26 is aa. */
    private static String letters(int index) {
        StringBuilder letters = new StringBuilder();
        for (int rest = index; rest >= 0; rest = rest / 26 - 1) {
            letters.insert(0, (char) ('a' + rest % 26));
        }
        return letters.toString();
    }
}
