package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Worklog;
import org.stockcutting.stock.Zone;

/** The boards of a plan as a worklog leaves them. */
final class Progress {

    private final Map<String, PlannedBoard> boards;
    private final Map<String, SawnBoard> sawn = new LinkedHashMap<>();
    private final Map<String, List<Zone>> found = new LinkedHashMap<>();

    private Progress(Map<String, PlannedBoard> boards) {
        this.boards = boards;
    }

    /** Follows the done steps; zones come once the worklog has no fault. */
    static Progress of(Job job, CuttingPlan plan, Worklog worklog) {
        Progress progress = new Progress(PlannedBoard.of(job, plan));
        Set<Integer> done = new HashSet<>(worklog.done());
        Map<String, List<SequenceStep>> steps = new LinkedHashMap<>();
        for (SequenceStep step : plan.derived().cutSequence()) {
            String board = step.board();
            if (board != null && done.contains(step.step())) {
                steps.computeIfAbsent(board, name -> new ArrayList<>()).add(step);
            }
        }
        progress.boards.forEach((name, board) ->
                progress.sawn.put(name, SawnBoard.of(board, steps.getOrDefault(name, List.of()))));
        return progress;
    }

    Map<String, PlannedBoard> boards() {
        return boards;
    }

    Map<String, SawnBoard> sawn() {
        return sawn;
    }

    /** Zones found since, by board, measured from the original zero. */
    List<Zone> found(String board) {
        return found.getOrDefault(board, List.of());
    }

    void find(Worklog worklog) {
        for (Worklog.FoundZone zone : worklog.zones()) {
            List<Zone> own = found.computeIfAbsent(zone.board(), name -> new ArrayList<>());
            Area fresh = fresh(zone.board());
            own.add(
                    zone.measuredFrom() == Worklog.MeasuredFrom.FRESH_END
                            ? moved(zone.zone(), fresh.x0(), fresh.y0())
                            : zone.zone());
        }
    }

    /** Blocks of a board that are still to be cut, or, where there are none, its offcuts. */
    List<SawnBoard.Block> open(String board) {
        SawnBoard state = sawn.get(board);
        if (state == null) {
            return List.of();
        }
        List<SawnBoard.Block> planned = state.blocks().stream()
                .filter(block -> block.rest() instanceof org.stockcutting.pattern.CutNode.Cuts)
                .toList();
        return planned.isEmpty() ? state.blocks() : planned;
    }

    /** Where a fresh end and edge are: the corner of what is still to be cut. */
    private Area fresh(String board) {
        List<SawnBoard.Block> open = open(board);
        return open.isEmpty()
                ? new Area(Length.ZERO, Length.ZERO, Length.ZERO, Length.ZERO)
                : open.get(0).area();
    }

    private static Zone moved(Zone zone, Length dx, Length dy) {
        Length fromEdge = zone.fromEdge();
        Length toEdge = zone.toEdge();
        return new Zone(
                zone.from().plus(dx),
                zone.to().plus(dx),
                fromEdge == null ? null : fromEdge.plus(dy),
                toEdge == null ? null : toEdge.plus(dy),
                zone.severity(),
                zone.face(),
                zone.metal());
    }
}
