package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
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
        StepKind kind = StepKind.TRIM;
        boolean fromTheWork = false;
        boolean first = true;
        for (SequenceStep step : steps) {
            if (first
                    || !Objects.equals(set, step.setUp())
                    || (set == null && kind != step.kind())
                    || ShapeText.isFromTheWork(step) != fromTheWork) {
                table.heading(heading(step));
            }
            set = step.setUp();
            kind = step.kind();
            fromTheWork = ShapeText.isFromTheWork(step);
            first = false;
            row(step, table);
        }
        flow.table(table);
        if (!notes.isEmpty()) {
            flow.heading("Notes");
            for (int i = 0; i < notes.size(); i++) {
                flow.paragraph((i + 1) + ". " + notes.get(i), Flow.BODY, 14);
            }
        }
    }

    private void row(SequenceStep step, Table table) {
        SawCut cut = step.cut();
        Wood left = cut == null ? null : cut.left();
        SequenceStep.Shape shape = step.shape();
        String kind = step.kind().word().replace('-', ' ');
        List<Piece> made = Stream.of(Optional.ofNullable(step.piece()), Optional.ofNullable(step.behind()))
                .flatMap(Optional::stream)
                .toList();
        table.tickRow(
                Integer.toString(step.step()),
                step.board() == null ? "" : step.board(),
                shape == null || shapes.what(shape).isEmpty() ? kind : kind + ": " + shapes.what(shape),
                cut == null ? shapes.reading(step) : lengths.position(CutReading.of(step, cut)),
                made.stream().map(piece -> mark(step, piece)).collect(Collectors.joining(", ")),
                left == null ? "" : lengths.gap(left.length()) + " x " + lengths.gap(left.width()),
                cut == null ? "" : lengths.gap(cut.slack()),
                notes(step));
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
