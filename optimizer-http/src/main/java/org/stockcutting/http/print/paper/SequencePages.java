package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.draw.PieceNames;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.http.print.CutReading;
import org.stockcutting.http.print.ShapeText;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.Wood;
import org.stockcutting.plan.StepKind;
import org.stockcutting.report.ChalkMarks;

/** The cut sequence, step by step with a box to tick, grouped by what stop and fence are set to. */
final class SequencePages {

    /** More equal steps on free pieces than this are one row. */
    private static final int MANY = 8;

    private final PrintedLengths lengths;
    private final ChalkMarks marks;
    private final PieceNames names;
    private final ShapeText shapes;
    private final List<String> notes = new ArrayList<>();

    SequencePages(Job job) {
        lengths = new PrintedLengths(job.writing());
        shapes = new ShapeText(lengths);
        marks = new ChalkMarks(job);
        names = new PieceNames(job);
    }

    void print(CuttingPlan plan, Flow flow) {
        List<SequenceStep> steps = plan.derived().cutSequence();
        if (steps.isEmpty()) {
            return;
        }
        flow.title("Cut sequence");
        flow.paragraph(
                "In this order; readings are from the origin end or edge of the board as it came. \"To spare\" is how much of what is"
                        + " left in hand may still be lost. A number in the last column is a note below.");
        Table table = new Table()
                .numbers("step")
                .column("board")
                .column("what")
                .numbers("reading, " + lengths.unit())
                .column("makes")
                .numbers("in hand")
                .numbers("to spare")
                .column("note");
        SequenceStep.@Nullable SetUp set = null;
        String said = "";
        int to = 0;
        for (int from = 0; from < steps.size(); from = to) {
            SequenceStep step = steps.get(from);
            String heading = heading(step);
            if (!heading.equals(said) || !Objects.equals(set, step.setUp())) {
                table.heading(heading);
            }
            set = step.setUp();
            said = heading;
            to = from + 1;
            while (to < steps.size() && isAlike(step, steps.get(to))) {
                to++;
            }
            if (to - from > MANY) {
                row(steps.subList(from, to), table);
            } else {
                steps.subList(from, to).forEach(one -> row(List.of(one), table));
            }
        }
        flow.table(table);
        if (!notes.isEmpty()) {
            flow.heading("Notes");
            for (int i = 0; i < notes.size(); i++) {
                flow.paragraph((i + 1) + ". " + notes.get(i), Flow.BODY, 14);
            }
        }
    }

    /** The same work on pieces of one part that are free of their boards: where they are many, one row tells it. */
    private static boolean isAlike(SequenceStep a, SequenceStep b) {
        Piece one = a.piece();
        Piece other = b.piece();
        return one != null
                && other != null
                && one.part().equals(other.part())
                && a.behind() == null
                && b.behind() == null
                && a.kind() == b.kind()
                && Objects.equals(a.setUp(), b.setUp())
                && Objects.equals(a.shape(), b.shape())
                && Objects.equals(a.caution(), b.caution())
                && Objects.equals(a.reason(), b.reason())
                && (a.cut() == null ? b.cut() == null : b.cut() != null && isAlike(a.cut(), b.cut()));
    }

    private static boolean isAlike(SawCut a, SawCut b) {
        Wood one = a.left();
        Wood other = b.left();
        return a.to() == null
                && b.to() == null
                && a.reading().equals(b.reading())
                && a.slack().equals(b.slack())
                && (one == null
                        ? other == null
                        : other != null
                                && one.length().equals(other.length())
                                && one.width().equals(other.width()));
    }

    private void row(List<SequenceStep> alike, Table table) {
        SequenceStep step = alike.get(0);
        int last = alike.get(alike.size() - 1).step();
        boolean single = alike.size() == 1;
        SawCut cut = step.cut();
        Wood left = cut == null ? null : cut.left();
        SequenceStep.Shape shape = step.shape();
        String kind = step.kind().word().replace('-', ' ');
        table.tickRow(
                step.step() + (single ? "" : "-" + last),
                step.board() == null || !single ? "" : step.board(),
                shape == null || shapes.what(shape).isEmpty() ? kind : kind + ": " + shapes.what(shape),
                cut == null ? shapes.reading(step) : lengths.position(CutReading.of(step, cut)),
                single ? made(step) : made(alike),
                left == null ? "" : lengths.gap(left.length()) + " x " + lengths.gap(left.width()),
                cut == null ? "" : lengths.gap(cut.slack()),
                notes(step));
    }

    private String made(SequenceStep step) {
        return Stream.of(Optional.ofNullable(step.piece()), Optional.ofNullable(step.behind()))
                .flatMap(Optional::stream)
                .map(piece -> mark(step, piece))
                .collect(Collectors.joining(", "));
    }

    /** All copies of one part, and which staves or plies of them. */
    private String made(List<SequenceStep> alike) {
        TreeSet<Integer> numbers = new TreeSet<>();
        TreeSet<Integer> members = new TreeSet<>();
        String part = "";
        for (SequenceStep step : alike) {
            Piece piece = Objects.requireNonNull(step.piece());
            part = piece.part();
            numbers.addAll(piece.member() == null ? names.numbers(step, piece) : List.of(piece.number()));
            if (piece.member() != null) {
                members.add(piece.member());
            }
        }
        String counted =
                marks.of(part) + PieceNames.joined(List.copyOf(numbers)).replace(", ", ",");
        return members.isEmpty()
                ? counted
                : counted + "/" + PieceNames.joined(List.copyOf(members)).replace(", ", ",");
    }

    private String mark(SequenceStep step, Piece piece) {
        return piece.member() == null
                ? marks.of(piece.part(), names.numbers(step, piece))
                : marks.of(piece.part(), piece.number(), piece.member());
    }

    private String heading(SequenceStep step) {
        if (ShapeText.isShaping(step)) {
            return shapes.heading(step);
        }
        SequenceStep.SetUp setUp = step.setUp();
        if (setUp == null) {
            return switch (step.kind()) {
                case JOINT -> "Joint one face and one edge";
                case REST -> "Let the wood rest, a day at least, until it moves no more";
                case GLUE -> "Glue up";
                default -> "Along a drawn line: nothing to set";
            };
        }
        if (step.kind() == StepKind.MITRE) {
            return ShapeText.mitre(setUp, lengths);
        }
        String at = lengths.position(setUp.stop()) + " " + lengths.unit();
        return switch (setUp.machine()) {
            case "crosscut" -> "Set the stop to " + at;
            case "rip" -> "Set the fence to " + at;
            default -> "Set the " + setUp.machine().replace('-', ' ').toLowerCase(Locale.ROOT) + " to " + at;
        };
    }

    private String notes(SequenceStep step) {
        return Stream.of(Optional.ofNullable(step.caution()), Optional.ofNullable(step.reason()))
                .flatMap(Optional::stream)
                .map(this::note)
                .collect(Collectors.joining(", "));
    }

    private String note(String text) {
        int at = notes.indexOf(text);
        if (at < 0) {
            notes.add(text);
            at = notes.size() - 1;
        }
        return Integer.toString(at + 1);
    }
}
