package org.stockcutting.http.print.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.stockcutting.draw.PrintedLengths;
import org.stockcutting.http.print.BoardGroup;
import org.stockcutting.job.Job;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.StepKind;
import org.stockcutting.report.ChalkMarks;

/** Makes the labels of a plan: one for each rough piece, by the order of the parts list, then by number. */
final class LabelMaker {

    /** Steps that only part a piece from its board: the label is put on when they are done. */
    private static final Set<StepKind> SAWING =
            EnumSet.of(StepKind.TRIM, StepKind.ROUGH_CROSSCUT, StepKind.CROSSCUT, StepKind.RIP, StepKind.MITRE);

    private final Job job;
    private final ChalkMarks marks;
    private final PrintedLengths lengths;
    private final Map<String, Part> parts = new HashMap<>();
    private final Map<String, Integer> order = new HashMap<>();
    private final Map<String, String> finishing;

    /** One finished piece. */
    private record Piece(String part, int number) {}

    /** A label with what it is sorted by. */
    private record Sorted(int part, int number, int member, Label label) {}

    LabelMaker(Job job) {
        this.job = job;
        marks = new ChalkMarks(job);
        lengths = new PrintedLengths(job.writing());
        for (Part part : job.parts()) {
            order.put(part.id(), parts.size());
            parts.put(part.id(), part);
        }
        finishing = new FinishedSizes(job, lengths).byPart();
    }

    List<Label> labels(CuttingPlan plan) {
        Map<Piece, String> next = nextSteps(plan);
        List<Sorted> sorted = new ArrayList<>();
        for (BoardGroup group : BoardGroup.of(plan)) {
            for (PlacedPiece piece : group.layout().pieces()) {
                for (int copy = 0; copy < group.layout().repeat(); copy++) {
                    sorted.add(label(group, piece, copy, next));
                }
            }
        }
        sorted.sort(Comparator.comparingInt(Sorted::part)
                .thenComparingInt(Sorted::number)
                .thenComparingInt(Sorted::member));
        return sorted.stream().map(Sorted::label).toList();
    }

    private Sorted label(BoardGroup group, PlacedPiece piece, int copy, Map<Piece, String> next) {
        int number = piece.numbers().get(copy);
        int member = piece.members().isEmpty() ? 0 : piece.members().get(copy);
        Part part = Objects.requireNonNull(parts.get(piece.part()), "a placed piece is of no part of the job");
        List<Integer> gang = part.gangFrom(number);
        int last = gang.get(gang.size() - 1);
        String counted = "#" + number + (last == number ? "" : "-" + last)
                + (member == 0 ? "" : (isLamination(part) ? " ply " : " stave ") + member);
        String size = lengths.part(piece.length()) + " x " + lengths.part(piece.width()) + " x "
                + lengths.part(group.layout().thickness()) + " " + lengths.unit();
        boolean spare = number > job.demand(part);
        Label label = new Label(
                member == 0 ? marks.of(part.id(), gang) : marks.of(part.id(), number, member),
                part.id(),
                counted + (spare ? " (spare)" : ""),
                size,
                next(part, number, next),
                group.layout().stock() + " #" + (group.first() + copy),
                Label.code(
                        job.name(),
                        part.id(),
                        number + (last == number ? "" : "-" + last) + (member == 0 ? "" : "/" + member)));
        return new Sorted(Objects.requireNonNullElse(order.get(part.id()), 0), number, member, label);
    }

    private String next(Part part, int number, Map<Piece, String> next) {
        String step = next.get(new Piece(part.id(), number));
        String finish = finishing.get(part.id());
        if (step != null) {
            return step + (finish == null ? "" : "; " + finish);
        }
        return finish == null ? "at its size" : finish;
    }

    /** The first step of each piece in the cut sequence that is not sawing it out. */
    private static Map<Piece, String> nextSteps(CuttingPlan plan) {
        Map<Piece, String> next = new HashMap<>();
        for (SequenceStep step : plan.derived().cutSequence()) {
            SequenceStep.Piece piece = step.piece();
            if (piece != null && !SAWING.contains(step.kind())) {
                next.putIfAbsent(
                        new Piece(piece.part(), piece.number()),
                        step.kind().word().replace('-', ' '));
            }
        }
        return next;
    }

    private static boolean isLamination(Part part) {
        return part.making() instanceof Making.Lamination;
    }
}
