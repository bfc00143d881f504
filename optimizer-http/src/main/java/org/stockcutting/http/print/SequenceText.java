package org.stockcutting.http.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.PieceNames;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.job.AllowanceProfile;
import org.stockcutting.job.Job;
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
    private final Set<String> trimmedLater = new HashSet<>();
    private final Map<String, SetUp> standing = new HashMap<>();
    private final Map<String, String> notes = new LinkedHashMap<>();

    SequenceText(Job job, PrintedLengths lengths) {
        this.lengths = lengths;
        this.names = new PieceNames(job);
        this.shapes = new ShapeText(lengths);
        for (Part part : job.parts()) {
            if (isTrimmedLater(job, part)) {
                trimmedLater.add(part.id());
            }
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

    private boolean isSameGroup(SequenceStep a, SequenceStep b) {
        return Objects.equals(a.setUp(), b.setUp())
                && (a.setUp() != null || a.kind() == b.kind() || (isToSections(a) && isToSections(b)))
                && (a.cut() == null) == (b.cut() == null)
                && ShapeText.isFromTheWork(a) == ShapeText.isFromTheWork(b);
    }

    /** Boards cut to sections along lines: sections with parts that are trimmed later, and bad wood between. */
    private boolean isToSections(SequenceStep step) {
        return step.kind() == StepKind.ROUGH_CROSSCUT
                || (step.kind() == StepKind.CROSSCUT && isTrimmedLater(step.piece()) && isTrimmedLater(step.behind()));
    }

    private boolean isTrimmedLater(@Nullable Piece piece) {
        return piece == null || trimmedLater.contains(piece.part());
    }

    private static boolean isTrimmedLater(Job job, Part part) {
        String profile = part.making() instanceof Making.Milled milled
                ? milled.profile()
                : part.making() instanceof Making.GlueUp
                        ? AllowanceProfile.GLUE_UP
                        : part.making() instanceof Making.Lamination ? AllowanceProfile.LAMINATION : "";
        AllowanceProfile own = job.allowances().get(profile);
        return own != null && own.length().isPositive();
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
            if (isToSections(step)) {
                return "Cut roughly to length, along a drawn line:";
            }
            return switch (step.kind()) {
                case TRIM -> "Square the ends and edges, along a drawn line:";
                case JOINT -> "Joint one face and one edge:";
                case REST -> "Let the wood rest, a day at least, until it moves no more.";
                case GLUE -> "Glue up:";
                case RIP -> "Rip along a drawn line:";
                default -> "Cut along a drawn line:";
            };
        }
        boolean stays = setUp.equals(standing.put(setUp.machine(), setUp));
        if (step.kind() == StepKind.MITRE) {
            return ShapeText.mitre(setUp, lengths) + ":";
        }
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
        int from = 0;
        while (from < steps.size()) {
            int to = from + 1;
            while (to < steps.size() && isSameSizing(steps.get(from), steps.get(to))) {
                to++;
            }
            List<SequenceStep> same = steps.subList(from, to);
            SequenceStep step = same.get(0);
            from = to;
            SawCut cut = Objects.requireNonNull(step.cut());
            SequenceStep.Wood left = cut.left();
            rows.add(List.of(
                    span(same),
                    same.size() == 1 ? board(step.board()) : "",
                    lengths.position(CutReading.of(step, cut)),
                    same.size() == 1 ? makes(step) : pieces(same),
                    left == null ? "-" : lengths.gap(left.length()) + " x " + lengths.gap(left.width()),
                    lengths.gap(cut.slack()),
                    marks(step)));
        }
        return rows;
    }

    /** Pieces in hand that are brought to one size at one setting: which board they once were of does not matter any more. */
    private static boolean isSameSizing(SequenceStep a, SequenceStep b) {
        SawCut one = Objects.requireNonNull(a.cut());
        SawCut other = Objects.requireNonNull(b.cut());
        return one.to() == null
                && other.to() == null
                && a.behind() == null
                && b.behind() == null
                && a.piece() != null
                && b.piece() != null
                && a.piece().part().equals(b.piece().part())
                && one.reading().equals(other.reading())
                && sameSize(one.left(), other.left())
                && one.slack().equals(other.slack())
                && Objects.equals(a.caution(), b.caution())
                && Objects.equals(a.reason(), b.reason());
    }

    private static boolean sameSize(SequenceStep.@Nullable Wood one, SequenceStep.@Nullable Wood other) {
        return one == null || other == null
                ? one == other
                : one.length().equals(other.length()) && one.width().equals(other.width());
    }

    private static String span(List<SequenceStep> steps) {
        int first = steps.get(0).step();
        int last = steps.get(steps.size() - 1).step();
        return first == last ? "" + first : first + "-" + last;
    }

    /** Pieces of one part: their numbers, and which of each number where it has several; how many where those differ. */
    private String pieces(List<SequenceStep> steps) {
        Map<Integer, List<Integer>> members = new TreeMap<>();
        for (SequenceStep step : steps) {
            Piece piece = Objects.requireNonNull(step.piece());
            if (piece.member() == null) {
                names.numbers(step, piece).forEach(number -> members.put(number, List.of()));
            } else {
                members.computeIfAbsent(piece.number(), number -> new ArrayList<>())
                        .add(piece.member());
            }
        }
        String part = Objects.requireNonNull(steps.get(0).piece()).part();
        String what = Clip.to(part, NAME) + " #" + PieceNames.joined(List.copyOf(members.keySet()));
        List<List<Integer>> different = members.values().stream().distinct().toList();
        if (different.size() == 1) {
            List<Integer> all = different.get(0);
            return all.isEmpty() ? what : what + " " + memberWord(part) + " " + PieceNames.joined(all);
        }
        return what + ", " + steps.size() + " pieces";
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
                && Objects.equals(a.shape(), b.shape())
                && Objects.equals(a.caution(), b.caution())
                && Objects.equals(a.reason(), b.reason());
    }

    private List<String> worked(List<SequenceStep> steps, String marks) {
        String what = steps.get(0).piece() == null ? "" : pieces(steps);
        SequenceStep.Shape shape = steps.get(0).shape();
        return List.of(
                span(steps),
                what,
                shapes.reading(steps.get(0)),
                shape == null ? "" : shapes.what(shape),
                "",
                "",
                marks);
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
