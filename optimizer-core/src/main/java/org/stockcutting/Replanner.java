package org.stockcutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobHash;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;
import org.stockcutting.mishap.Unit;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;
import org.stockcutting.solve.PieceWeight;

/**
 * Plans what is left after a mishap: value first, then fewest changed layouts.
 *
 * <p>First everything is kept and only what is missing is planned. Where that is dearer than the whole planned afresh, boards are freed,
 * one, two and more, until it is not; the fresh plan is the last resort.
 */
final class Replanner {

    /** Most pieces of wood that are freed each on its own. */
    private static final int SINGLE_TRIES = 4;
    /** Share of the work that an attempt with kept boards gets. */
    private static final int SHARE = 8;

    private final Job job;
    private final String hash;
    private final List<Unit> units;
    private final BiFunction<Job, Effort, CuttingPlan> planner;
    private final CancelToken cancel;
    private @Nullable CuttingPlan scratch;
    private @Nullable CuttingPlan best;

    /**
     * @param job the job that is left
     * @param units pieces of wood that have a layout already
     * @param planner plans a job
     */
    Replanner(Job job, List<Unit> units, BiFunction<Job, Effort, CuttingPlan> planner, CancelToken cancel) {
        this.job = job;
        this.hash = JobHash.of(job);
        this.units = units;
        this.planner = planner;
        this.cancel = cancel;
    }

    CuttingPlan plan() {
        List<Unit> sound = sound();
        attempt(sound);
        if (best != null && isFree(best)) {
            return best;
        }
        CuttingPlan whole = planner.apply(job, job.effort());
        scratch = whole;
        // Proved by the duals of the fresh plan, the first answer says more.
        best = null;
        attempt(sound);
        for (List<Unit> kept : fewer(sound)) {
            if (cancel.isCancelled() || (best != null && !isBetter(whole, best))) {
                break;
            }
            attempt(kept);
        }
        return best == null || isBetter(whole, best) ? whole : best;
    }

    /** Nothing is bought and nothing is left out: no plan can be better, unless wood itself is counted. */
    private boolean isFree(CuttingPlan plan) {
        return job.goal() != Goal.WASTE
                && plan.unplaced().isEmpty()
                && plan.objective().value().signum() == 0;
    }

    /** Units whose layouts still hold: the checker says which do not. */
    private List<Unit> sound() {
        List<Unit> sound = KeptBoards.closed(job, units);
        while (!sound.isEmpty()) {
            List<Layout> layouts = new ArrayList<>(new KeptBoards(job, sound).layouts());
            CuttingPlan plan =
                    new LayoutAssembler(job, hash, null).assemble(new KeptBoards.Answer(layouts, List.of(), 0, false));
            Set<String> broken = brokenStock(plan);
            if (broken.isEmpty()) {
                break;
            }
            List<Unit> rest = new ArrayList<>(sound);
            rest.removeIf(unit -> broken.contains(unit.id()));
            sound = KeptBoards.closed(job, rest);
        }
        return sound;
    }

    private Set<String> brokenStock(CuttingPlan plan) {
        Set<String> broken = new HashSet<>();
        for (Violation violation : PlanChecker.check(job, plan)) {
            String[] steps = violation.pointer().split("/", -1);
            if (steps.length > 2 && steps[1].equals("layouts")) {
                broken.add(plan.layouts().get(Integer.parseInt(steps[2])).stock());
            }
        }
        return broken;
    }

    /** Ever fewer kept units: first without one of them, then without the first two, four and so on. */
    private List<List<Unit>> fewer(List<Unit> sound) {
        List<Unit> order = new ArrayList<>(sound);
        order.sort(Comparator.comparing(Replanner::rest).reversed().thenComparing(Unit::id));
        List<List<Unit>> fewer = new ArrayList<>();
        for (int i = 0; i < Math.min(SINGLE_TRIES, order.size()); i++) {
            List<Unit> kept = new ArrayList<>(sound);
            kept.remove(order.get(i));
            fewer.add(KeptBoards.closed(job, kept));
        }
        for (int count = 2; count < order.size(); count *= 2) {
            List<Unit> kept = new ArrayList<>(sound);
            kept.removeAll(order.subList(0, count));
            fewer.add(KeptBoards.closed(job, kept));
        }
        return fewer;
    }

    /** How much of a unit is left over: where much is, most can be changed. */
    private static BigInteger rest(Unit unit) {
        BigInteger area = BigInteger.ZERO;
        for (Layout.LeftOver rest : unit.layout().offcuts()) {
            area = area.add(BigInteger.valueOf(rest.length().nanometres())
                    .multiply(BigInteger.valueOf(rest.width().nanometres())));
        }
        return area;
    }

    private void attempt(List<Unit> kept) {
        KeptBoards boards = new KeptBoards(job, kept);
        KeptBoards.Smaller smaller = boards.smaller();
        KeptBoards.Answer answer;
        if (smaller == null) {
            answer = boards.alone();
        } else {
            if (!JobReview.review(smaller.job()).isEmpty()) {
                return;
            }
            CuttingPlan rest = planned(smaller.job());
            if (rest == null) {
                return;
            }
            answer = boards.joined(smaller, rest);
        }
        CuttingPlan plan = new LayoutAssembler(job, hash, scratch).assemble(answer);
        if (PlanChecker.check(job, plan).isEmpty() && (best == null || isBetter(plan, best))) {
            best = plan;
        }
    }

    /** A plan of a smaller job, or null where none came out that holds: other attempts and the fresh plan remain. */
    private @Nullable CuttingPlan planned(Job smaller) {
        try {
            return planner.apply(smaller, share());
        } catch (PlanRejectedException e) {
            return null;
        }
    }

    private Effort share() {
        Effort whole = job.effort();
        Long work = whole.work();
        Integer seconds = whole.seconds();
        return new Effort(
                work == null && seconds != null
                        ? null
                        : Math.max(1, (work == null ? Effort.DEFAULT_WORK : work) / SHARE),
                seconds == null ? null : Math.max(1, seconds / SHARE),
                whole.seed(),
                whole.threads());
    }

    /** True if a plan places more finished volume than another, or as much and is worth less: the order of goals of every plan. */
    private boolean isBetter(CuttingPlan plan, CuttingPlan other) {
        int missing = missing(plan).compareTo(missing(other));
        return missing < 0
                || (missing == 0
                        && plan.objective().value().compareTo(other.objective().value()) < 0);
    }

    /** Finished volume that a plan leaves out, in cubic nanometres. */
    private BigInteger missing(CuttingPlan plan) {
        BigInteger volume = BigInteger.ZERO;
        for (Unplaced line : plan.unplaced()) {
            for (Part part : job.parts()) {
                if (part.id().equals(line.part())) {
                    volume = volume.add(
                            PieceWeight.finished(part).cubicNanometres().multiply(BigInteger.valueOf(line.quantity())));
                }
            }
        }
        return volume;
    }
}
