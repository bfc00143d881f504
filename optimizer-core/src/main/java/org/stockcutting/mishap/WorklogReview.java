package org.stockcutting.mishap;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Worklog;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/** Every fault of a worklog at once, with pointers into its document. */
final class WorklogReview {

    private final Job job;
    private final CuttingPlan plan;
    private final Worklog worklog;
    private final Progress progress;
    private final Map<String, StockItem> owned = new TreeMap<>();
    private final List<Fault> faults = new ArrayList<>();

    private WorklogReview(Job job, CuttingPlan plan, Worklog worklog, Progress progress) {
        this.job = job;
        this.plan = plan;
        this.worklog = worklog;
        this.progress = progress;
        for (StockItem.OnHand item : job.onHand()) {
            for (int k = 1; k <= item.quantity(); k++) {
                owned.put(item.id() + " #" + k, item);
            }
        }
        progress.boards().forEach((name, board) -> owned.put(name, board.stock()));
    }

    static List<Fault> review(Job job, CuttingPlan plan, Worklog worklog, Progress progress) {
        WorklogReview review = new WorklogReview(job, plan, worklog, progress);
        review.plan();
        review.done();
        review.spoiled();
        review.zones();
        review.missing();
        return review.faults;
    }

    private void plan() {
        if (!worklog.plan().equals(plan.header().jobHash())) {
            add(
                    "/plan",
                    FaultCode.OTHER_PLAN,
                    worklog.plan(),
                    plan.header().jobHash(),
                    "The worklog is of another plan; give the jobHash that stands in the plan that was followed.");
        }
    }

    private void done() {
        Map<Integer, SequenceStep> steps = new HashMap<>();
        plan.derived().cutSequence().forEach(step -> steps.put(step.step(), step));
        Set<Integer> done = new HashSet<>(worklog.done());
        Map<String, Integer> open = new HashMap<>();
        for (SequenceStep step : plan.derived().cutSequence()) {
            String board = step.board();
            if (board != null && !done.contains(step.step())) {
                open.putIfAbsent(board, step.step());
            }
        }
        for (int i = 0; i < worklog.done().size(); i++) {
            int number = worklog.done().get(i);
            SequenceStep step = steps.get(number);
            if (step == null) {
                add(
                        "/done/" + i,
                        FaultCode.UNKNOWN_STEP,
                        Integer.toString(number),
                        "1 to " + steps.size(),
                        "The cut sequence has no step " + number + "; its steps are 1 to " + steps.size() + ".");
                continue;
            }
            // Work that is of no one board any more waits for none of them.
            String board = step.board();
            int first = board == null ? Integer.MAX_VALUE : open.getOrDefault(board, Integer.MAX_VALUE);
            if (first < number) {
                add(
                        "/done/" + i,
                        FaultCode.EARLIER_STEP_OPEN,
                        Integer.toString(number),
                        "step " + first + " done before it",
                        "Step " + number + " is done, but step " + first + " of the same board (" + board
                                + ") comes before it and is not; tick that one too, or take this one out.");
            }
        }
    }

    private void spoiled() {
        Set<Want> cut = new HashSet<>();
        progress.sawn()
                .values()
                .forEach(board -> board.finished()
                        .forEach(piece -> cut.add(Want.of(piece, board.board().copy()))));
        for (int i = 0; i < worklog.spoiled().size(); i++) {
            Worklog.Spoiled spoiled = worklog.spoiled().get(i);
            String at = "/spoiled/" + i;
            Part part = job.parts().stream()
                    .filter(own -> own.id().equals(spoiled.part()))
                    .findFirst()
                    .orElse(null);
            if (part == null) {
                add(
                        at + "/part",
                        FaultCode.UNKNOWN_PART,
                        spoiled.part(),
                        "a part of the job",
                        "The job has no part \"" + spoiled.part() + "\"; give the id that the plan uses.");
                continue;
            }
            boolean isCut = cut.stream()
                    .anyMatch(want -> want.part().equals(spoiled.part())
                            && part.gangFrom(want.number()).contains(spoiled.number())
                            && (spoiled.member() == null || want.member() == spoiled.member()));
            if (!isCut) {
                add(
                        at + "/number",
                        FaultCode.NOT_CUT,
                        Integer.toString(spoiled.number()),
                        "a piece that the done steps cut free",
                        "Number " + spoiled.number() + " of " + spoiled.part()
                                + " is not cut yet by the steps that are done, so it cannot be spoiled: tick the step that "
                                + "cut it, or say which stretch of its board is bad.");
            }
        }
    }

    private void zones() {
        for (int i = 0; i < worklog.zones().size(); i++) {
            Worklog.FoundZone found = worklog.zones().get(i);
            String at = "/zones/" + i;
            StockItem stock = owned.get(found.board());
            if (stock == null) {
                unknownBoard(at + "/board", found.board());
            } else {
                zone(at, found, stock);
            }
        }
    }

    private void zone(String at, Worklog.FoundZone found, StockItem stock) {
        Zone zone = found.zone();
        Length dx = Length.ZERO;
        Length dy = Length.ZERO;
        List<SawnBoard.Block> open = progress.open(found.board());
        if (found.measuredFrom() == Worklog.MeasuredFrom.FRESH_END && !open.isEmpty()) {
            Area first = open.get(0).area();
            boolean several = open.stream()
                    .anyMatch(block -> !block.area().x0().equals(first.x0())
                            || (zone.fromEdge() != null && !block.area().y0().equals(first.y0())));
            if (several) {
                add(
                        at + "/measuredFrom",
                        FaultCode.CONFLICT,
                        found.measuredFrom().word(),
                        Worklog.MeasuredFrom.ORIGINAL_ZERO.word(),
                        found.board() + " is in several pieces with ends of their own by now; measure from where the "
                                + "board's start end was.");
                return;
            }
            dx = first.x0();
            dy = first.y0();
        }
        extent(at, "from", "to", zone.from(), zone.to(), dx, stock.length());
        Length fromEdge = zone.fromEdge();
        Length toEdge = zone.toEdge();
        if (fromEdge != null && toEdge != null) {
            extent(at, "fromEdge", "toEdge", fromEdge, toEdge, dy, stock.width());
        }
    }

    private void extent(String at, String low, String high, Length from, Length to, Length shift, Length size) {
        if (from.isNegative() || to.plus(shift).isMoreThan(size)) {
            add(
                    at + "/" + (from.isNegative() ? low : high),
                    FaultCode.ZONE_OUTSIDE,
                    (from.isNegative() ? from : to).toString(),
                    "0 to " + size.minus(shift),
                    "The bad stretch reaches beyond its board; measure again.");
        } else if (!from.isLessThan(to)) {
            add(
                    at + "/" + high,
                    FaultCode.EMPTY_ZONE,
                    to.toString(),
                    "more than " + from,
                    "The bad stretch ends where it begins, or before; swap the two readings or measure again.");
        }
    }

    private void missing() {
        for (int i = 0; i < worklog.missing().size(); i++) {
            if (!owned.containsKey(worklog.missing().get(i))) {
                unknownBoard("/missing/" + i, worklog.missing().get(i));
            }
        }
    }

    private void unknownBoard(String pointer, String name) {
        String example =
                owned.isEmpty() ? "2x4-8 #1" : owned.keySet().iterator().next();
        add(
                pointer,
                FaultCode.UNKNOWN_BOARD,
                name,
                "a board of the plan, such as " + example,
                "The plan has no board \"" + name + "\"; name it as the cut sequence does, such as \"" + example
                        + "\".");
    }

    private void add(String pointer, FaultCode code, @Nullable String got, String expected, String text) {
        faults.add(new Fault(pointer, code.word(), String.valueOf(got), expected, text));
    }
}
