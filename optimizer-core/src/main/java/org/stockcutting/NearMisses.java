package org.stockcutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Side;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.NearMiss;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.solve.Solver;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;

/**
 * Near misses of a plan: for each line with a tolerance, the smallest reduction of its length, or of its width, with which a checked
 * plan costs less, or places more where something is left out.
 *
 * <p>First each line is planned with its whole tolerance; where that helps, the reduction is bisected in steps of a fine tape. All
 * trials together may take half the work of the plan. Parts that are shaped are left alone: their tapers and marks are of one size. Under the goal waste nothing is looked for: there every smaller part is a gain of
 * its own size.
 */
final class NearMisses {

    /** A tape shows no less. */
    private static final Length INCH_STEP = Length.inches("0.015625");

    private static final Length METRIC_STEP = Length.millimetres("0.1");
    private static final long LEAST_WORK = 2_000;

    private final Solver solver;
    private final Job job;
    private final CuttingPlan plan;
    private final CancelToken cancel;
    private final Length step;
    private long work;
    private boolean reproducible = true;

    /** A side of a line that may be smaller, in so many steps. */
    private record Chance(Part part, Side side, Length step, int steps) {

        Length by(int count) {
            return Length.ofNanometres(step.nanometres() * count);
        }
    }

    NearMisses(Solver solver, Job job, CuttingPlan plan, CancelToken cancel) {
        this.solver = solver;
        this.job = job;
        this.plan = plan;
        this.cancel = cancel;
        this.step = job.writing().unit().isImperial() ? INCH_STEP : METRIC_STEP;
    }

    /** The plan with its near misses. */
    CuttingPlan added() {
        List<Chance> chances = job.goal() == Goal.WASTE ? List.of() : chances();
        if (chances.isEmpty()) {
            return plan;
        }
        List<Chance> hopeful = new ArrayList<>();
        List<CuttingPlan> helped = new ArrayList<>();
        long share = allWork() / 2;
        for (Chance chance : chances) {
            CuttingPlan full = trial(chance, chance.steps(), share / chances.size());
            if (full != null && isGain(full)) {
                hopeful.add(chance);
                helped.add(full);
            }
        }
        List<NearMiss> misses = new ArrayList<>();
        for (int i = 0; i < hopeful.size(); i++) {
            misses.add(smallest(hopeful.get(i), helped.get(i), share / hopeful.size()));
        }
        return plan.withHeader(plan.header().after(work, reproducible && !cancel.isCancelled()))
                .withDerived(plan.derived().withNearMisses(misses));
    }

    private List<Chance> chances() {
        List<Chance> chances = new ArrayList<>();
        for (Part part : job.parts()) {
            Length tolerance = part.shaping().tolerance();
            if (!tolerance.isPositive() || !part.shaping().isNone()) {
                continue;
            }
            boolean coarse = tolerance.isLessThan(step);
            int steps = coarse ? 1 : (int) Math.min(1 << 20, tolerance.nanometres() / step.nanometres());
            for (Side side : Side.values()) {
                if (mayShrink(part, side, tolerance)) {
                    chances.add(new Chance(part, side, coarse ? tolerance : step, steps));
                }
            }
        }
        return chances;
    }

    private static boolean mayShrink(Part part, Side side, Length tolerance) {
        if (side == Side.LENGTH) {
            return part.coreLength().isMoreThan(tolerance);
        }
        return part.coreSection() instanceof Section.Measured measured
                && measured.width().isMoreThan(tolerance);
    }

    /** Half of what the plan itself may take; where only the clock limits, a step counts as a microsecond. */
    private long allWork() {
        Effort effort = job.effort();
        Long limit = effort.work();
        if (limit != null) {
            return limit / 2;
        }
        Integer seconds = effort.seconds();
        return (seconds == null ? Effort.DEFAULT_WORK : seconds * 1_000_000L) / 2;
    }

    /** The least number of steps for which a plan was found; each refusal narrows from below, each plan from above. */
    private NearMiss smallest(Chance chance, CuttingPlan full, long share) {
        int trials = 33 - Integer.numberOfLeadingZeros(chance.steps());
        int refused = 0;
        int found = chance.steps();
        CuttingPlan best = full;
        CuttingPlan last = plan;
        while (found - refused > 1) {
            int middle = (found + refused) >>> 1;
            CuttingPlan tried = trial(chance, middle, share / trials);
            if (tried != null && isGain(tried)) {
                found = middle;
                best = tried;
            } else if (tried != null) {
                refused = middle;
                last = tried;
            } else {
                break;
            }
        }
        boolean proved = found - refused == 1 && isRefuted(chance, last);
        return new NearMiss(
                chance.part().id(),
                chance.side(),
                chance.by(found),
                missing(plan) - missing(best),
                bought(plan, Form.BOARD) - bought(best, Form.BOARD),
                bought(plan, Form.SHEET) - bought(best, Form.SHEET),
                saved(best),
                proved);
    }

    private @Nullable CuttingPlan trial(Chance chance, int count, long share) {
        if (cancel.isCancelled()) {
            return null;
        }
        Effort own = job.effort();
        Effort effort = new Effort(Math.max(LEAST_WORK, share), own.seconds(), own.seed(), own.threads());
        List<Part> parts = job.parts().stream()
                .map(part -> part.equals(chance.part()) ? part.smaller(chance.side(), chance.by(count)) : part)
                .toList();
        Job smaller = job.withLists(parts, job.forSale(), job.onHand());
        CuttingPlan tried = new PlanningRun(smaller.withEffort(effort), ProgressListener.NONE, cancel).run(solver);
        work += tried.header().work();
        reproducible &= tried.header().reproducible();
        return tried;
    }

    /** Nothing more is missing of any part, and less is missing in all, or the goal's value is less. */
    private boolean isGain(CuttingPlan other) {
        for (Unplaced line : other.unplaced()) {
            if (line.quantity() > missing(plan, line.part())) {
                return false;
            }
        }
        return missing(other) < missing(plan)
                || other.objective().value().compareTo(plan.objective().value()) < 0;
    }

    /** True if it is certain that one step less gains nothing. */
    private boolean isRefuted(Chance chance, CuttingPlan less) {
        BigInteger value = plan.objective().value();
        if (plan.unplaced().isEmpty()) {
            return less.unplaced().isEmpty() && less.objective().bound().compareTo(value) >= 0;
        }
        // Everything else is as before, so only a gain of this very part is possible, and it fits nowhere.
        return plan.unplaced().size() == 1
                && less.unplaced().size() == 1
                && less.unplaced().get(0).part().equals(chance.part().id())
                && less.unplaced().get(0).quantity() == job.demand(chance.part())
                && less.objective().bound().compareTo(value) >= 0
                && isTooLarge(less.unplaced().get(0).reason());
    }

    private static boolean isTooLarge(Unplaced.Reason reason) {
        return reason == Unplaced.Reason.LONGER_THAN_ANY_STOCK
                || reason == Unplaced.Reason.WIDER_THAN_ANY_STOCK
                || reason == Unplaced.Reason.NO_CLEAR_ZONE;
    }

    private static int missing(CuttingPlan plan) {
        return plan.unplaced().stream().mapToInt(Unplaced::quantity).sum();
    }

    private static int missing(CuttingPlan plan, String part) {
        return plan.unplaced().stream()
                .filter(line -> line.part().equals(part))
                .mapToInt(Unplaced::quantity)
                .sum();
    }

    private int bought(CuttingPlan of, Form form) {
        int sum = 0;
        for (BuyingLine line : of.derived().buyingList()) {
            for (StockItem.ForSale item : job.forSale()) {
                sum += item.id().equals(line.stock()) && item.form() == form ? line.quantity() : 0;
            }
        }
        return sum;
    }

    private @Nullable Money saved(CuttingPlan best) {
        Money before = plan.cost();
        Money after = best.cost();
        return before == null || after == null ? null : before.plus(after.times(-1));
    }
}
