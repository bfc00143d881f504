package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Comparison.Limit;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.solve.Solver;
import org.stockcutting.stock.Money;

/**
 * What a plan comes to without the rule that leaves a part out: said with the way out. The job is planned again without each such rule,
 * all together with at most half of the plan's work; each of these plans went through the checker, and none is kept.
 */
final class RulePrices {

    private static final long LEAST_WORK = 2_000;

    private final Solver solver;
    private final Job job;
    private final CuttingPlan plan;
    private final CancelToken cancel;
    private long work;
    private boolean reproducible = true;

    private RulePrices(Solver solver, Job job, CuttingPlan plan, CancelToken cancel) {
        this.solver = solver;
        this.job = job;
        this.plan = plan;
        this.cancel = cancel;
    }

    /** The plan, its ways out completed; the same plan where no rule leaves anything out. */
    static CuttingPlan told(Solver solver, Job job, CuttingPlan plan, CancelToken cancel) {
        return new RulePrices(solver, job, plan, cancel).told();
    }

    private CuttingPlan told() {
        List<Lifted> all = Lifted.all(job);
        List<Unplaced> lines = new ArrayList<>();
        int tries = (int) plan.unplaced().stream()
                .mapToLong(line -> lifts(line, all).size())
                .sum();
        if (tries == 0) {
            return plan;
        }
        for (Unplaced line : plan.unplaced()) {
            lines.add(told(line, lifts(line, all), tries));
        }
        return plan.withHeader(plan.header().after(work, reproducible && !cancel.isCancelled()))
                .withUnplaced(lines);
    }

    /** The rules, one at a time, that may be what leaves a part out. */
    private List<Lifted> lifts(Unplaced line, List<Lifted> all) {
        Part part = job.parts().stream()
                .filter(own -> own.id().equals(line.part()))
                .findFirst()
                .orElse(null);
        if (part == null || line.reason() != Unplaced.Reason.EXCLUDED_BY_RULE) {
            return List.of();
        }
        return all.stream().filter(lift -> concerns(lift, part)).toList();
    }

    private static boolean concerns(Lifted lift, Part part) {
        Limit limit = lift.limit();
        if (part.selection().cutFrom() != null) {
            return limit == Limit.CUT_FROM && part.id().equals(lift.name());
        }
        if (part.group() != null) {
            return limit == Limit.GROUP && part.group().equals(lift.name());
        }
        return limit == Limit.CAR_LENGTH || limit == Limit.STAGES || limit == Limit.FIRST_CUT;
    }

    private Unplaced told(Unplaced line, List<Lifted> lifts, int tries) {
        for (Lifted lift : lifts) {
            CuttingPlan free = cancel.isCancelled() ? null : without(lift.job(), tries);
            if (free != null && missing(free, line.part()) < line.quantity()) {
                return new Unplaced(
                        line.part(),
                        line.quantity(),
                        line.reason(),
                        line.needs(),
                        line.limit(),
                        line.remedy() + "; without " + named(lift) + " " + outcome(free, line.part()));
            }
        }
        return line;
    }

    private static String named(Lifted lift) {
        return switch (lift.limit()) {
            case GROUP -> "group " + lift.name();
            case CUT_FROM -> "this choice";
            case CAR_LENGTH -> "the limit of the car";
            case STAGES -> "the limit of stages";
            case FIRST_CUT -> "the rule on the first cut";
            case AVAILABLE -> "the limit of " + lift.name();
        };
    }

    /** What there is then, against what there is now. */
    private String outcome(CuttingPlan free, String part) {
        String placed = free.unplaced().isEmpty()
                ? "all parts have wood"
                : missing(free, part) == 0 ? "it has wood" : "more of it has wood";
        Money now = plan.cost();
        Money then = free.cost();
        return now == null || then == null ? placed : placed + " and the list costs " + then + ", not " + now;
    }

    private static int missing(CuttingPlan of, String part) {
        return of.unplaced().stream()
                .filter(line -> line.part().equals(part))
                .mapToInt(Unplaced::quantity)
                .sum();
    }

    private @Nullable CuttingPlan without(Job free, int tries) {
        Effort own = job.effort();
        Long limit = own.work();
        Integer seconds = own.seconds();
        long all = limit != null ? limit : seconds == null ? Effort.DEFAULT_WORK : seconds * 1_000_000L;
        Effort effort = new Effort(Math.max(LEAST_WORK, all / 2 / tries), own.seconds(), own.seed(), own.threads());
        CuttingPlan found = new PlanningRun(free.withEffort(effort), ProgressListener.NONE, cancel).run(solver);
        work += found.header().work();
        reproducible &= found.header().reproducible();
        return found;
    }
}
