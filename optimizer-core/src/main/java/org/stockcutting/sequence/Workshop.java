package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Shaping;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.SequenceStep.Piece;
import org.stockcutting.plan.SequenceStep.SawCut;
import org.stockcutting.plan.SequenceStep.SetUp;
import org.stockcutting.plan.SequenceStep.Shape;
import org.stockcutting.plan.StepKind;
import org.stockcutting.stock.StockItem;

/** What all readers of one plan share: the job, what is to be done to its parts, and the steps found so far. */
final class Workshop {

    private final Job job;
    private final Cautions cautions;
    private final Map<String, Route> routes = new HashMap<>();
    private final Map<String, StockItem> stock = new HashMap<>();
    private final List<Task> tasks = new ArrayList<>();

    Workshop(Job job) {
        this.job = job;
        this.cautions = new Cautions(job.writing(), job.shop().machines());
        BlankPlanner.plan(job).forEach(rough -> routes.put(rough.part().id(), Route.of(rough, job)));
        Stream.concat(job.forSale().stream(), job.onHand().stream()).forEach(item -> stock.put(item.id(), item));
    }

    Job job() {
        return job;
    }

    Cautions cautions() {
        return cautions;
    }

    /** Null for a part that the job does not have. */
    @Nullable Route route(String part) {
        return routes.get(part);
    }

    /** Null for stock that the job does not have. */
    @Nullable StockItem stock(String id) {
        return stock.get(id);
    }

    List<Task> tasks() {
        return tasks;
    }

    /** Puts down a step that waits for another one, if that is given. */
    Task add(Draft draft, Task.Phase phase, @Nullable Task after) {
        return add(draft, phase, 0, after);
    }

    /** Puts down a step that does something to mark number {@code work} of a part, from 1. */
    Task add(Draft draft, Task.Phase phase, int work, @Nullable Task after) {
        Piece piece = draft.piece();
        Route route = piece == null ? null : routes.get(piece.part());
        boolean spare = piece != null && route != null && piece.number() > job.demand(route.part());
        Task task = new Task(tasks.size(), draft.step(), phase, spare, mates(piece, route, work));
        tasks.add(task);
        if (after != null) {
            after.before(task);
        }
        return task;
    }

    private static Task.Mates mates(@Nullable Piece piece, @Nullable Route route, int work) {
        if (piece == null) {
            return Task.Mates.NONE;
        }
        String group = route == null ? null : route.part().group();
        Integer member = piece.member();
        boolean right =
                work > 0 && route != null && route.part().shaping().hand().of(piece.number()) == Shaping.Hand.RIGHT;
        return new Task.Mates(
                group == null ? "" : group,
                piece.part(),
                work,
                right ? 1 : 0,
                piece.number(),
                member == null ? 0 : member);
    }

    /** A step without its number. */
    record Draft(
            StepKind kind,
            @Nullable SetUp setUp,
            @Nullable String board,
            @Nullable SawCut cut,
            @Nullable Piece piece,
            @Nullable Piece behind,
            @Nullable String caution,
            @Nullable String reason,
            @Nullable Shape shape) {

        SequenceStep step() {
            return new SequenceStep(0, kind, setUp, board, cut, piece, behind, caution, reason, shape);
        }

        /** Something marked, bored or tapered. */
        static Draft shaping(StepKind kind, @Nullable SetUp setUp, @Nullable String board, Piece piece, Shape shape) {
            return shaping(kind, setUp, board, piece, shape, null);
        }

        /** The same, with a caution. */
        static Draft shaping(
                StepKind kind,
                @Nullable SetUp setUp,
                @Nullable String board,
                Piece piece,
                Shape shape,
                @Nullable String caution) {
            return new Draft(kind, setUp, board, null, piece, null, caution, null, shape);
        }

        /** Something done to a piece at a machine or by hand, without a saw. */
        static Draft work(
                StepKind kind,
                @Nullable SetUp setUp,
                @Nullable String board,
                @Nullable Piece piece,
                @Nullable String caution) {
            return new Draft(kind, setUp, board, null, piece, null, caution, null, null);
        }
    }

    /** True if the stop of the crosscut saw does not reach so far: then the piece is measured. */
    boolean isBeyondStop(Length length) {
        Length reach = job.shop().stopReach();
        return reach != null && length.isMoreThan(reach);
    }

    /** Kerf of a cut in this direction. */
    Length kerf(Direction cut) {
        return cut == Direction.RIP
                ? job.shop().kerf().rip()
                : job.shop().kerf().crosscut();
    }
}
