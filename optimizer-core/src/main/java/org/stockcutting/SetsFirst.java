package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobHash;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.Shortage;
import org.stockcutting.mishap.Want;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.WholeSets;
import org.stockcutting.stock.StockItem;

/**
 * Where the wood does not suffice: as many whole sets as possible, by halving between what a plan of all sets makes whole and what is
 * refuted. Parts of the next sets then come from the leftovers of these boards and from boards on hand that are left; nothing is bought
 * for them.
 */
final class SetsFirst {

    private final Job job;
    private final Function<Job, CuttingPlan> planner;
    private final CancelToken cancel;
    private long work;
    private boolean cutShort;

    /**
     * @param job a job in canonical order
     * @param planner plans a job in canonical order with its own effort
     */
    SetsFirst(Job job, Function<Job, CuttingPlan> planner, CancelToken cancel) {
        this.job = job;
        this.planner = planner;
        this.cancel = cancel;
    }

    /** True if the job asks for whole sets first. */
    static boolean isAsked(Job job) {
        return job.shortage() == Shortage.WHOLE_SETS;
    }

    /** @param whole a plan of all sets that places most wood */
    CuttingPlan of(CuttingPlan whole) {
        int least = complete(job, whole);
        if (whole.unplaced().isEmpty()) {
            return whole.withDerived(whole.derived().withWholeSets(new WholeSets(least, least, List.of())));
        }
        int atMost = isRefuted(whole) ? job.sets() - 1 : job.sets();
        CuttingPlan sets = null;
        int low = least;
        int high = job.sets() - 1;
        while (low < high && !cancel.isCancelled()) {
            int middle = (low + high + 1) >>> 1;
            CuttingPlan plan = planned(fewer(middle));
            if (plan != null && plan.unplaced().isEmpty()) {
                sets = plan;
                low = middle;
            } else {
                high = middle - 1;
                if (plan != null && isRefuted(plan)) {
                    atMost = Math.min(atMost, high);
                }
            }
        }
        CuttingPlan best = sets == null ? whole : filled(whole, sets, low);
        int complete = complete(job, best);
        return best.withDerived(best.derived()
                .withWholeSets(new WholeSets(complete, Math.max(complete, atMost), lacks(best, complete))));
    }

    /** True if it is proved that not all parts can be placed. */
    private static boolean isRefuted(CuttingPlan plan) {
        boolean nothing =
                plan.header().status() == Status.NO_PLAN && plan.header().stopReason() == StopReason.PROVED;
        return plan.header().status() == Status.INFEASIBLE || nothing;
    }

    /** Complete sets, whichever copies they are made of. */
    private static int complete(Job job, CuttingPlan plan) {
        Map<String, Integer> missing = missing(plan);
        int complete = job.sets();
        for (Part part : job.parts()) {
            int placed = job.demand(part) - missing.getOrDefault(part.id(), 0);
            complete = Math.min(complete, placed / part.quantity());
        }
        return complete;
    }

    private static Map<String, Integer> missing(CuttingPlan plan) {
        Map<String, Integer> missing = new TreeMap<>();
        plan.unplaced().forEach(line -> missing.merge(line.part(), line.quantity(), Integer::sum));
        return missing;
    }

    private List<WholeSets.Lack> lacks(CuttingPlan plan, int complete) {
        Map<String, Integer> missing = missing(plan);
        List<WholeSets.Lack> lacks = new ArrayList<>();
        for (Part part : job.parts()) {
            int placed = job.demand(part) - missing.getOrDefault(part.id(), 0);
            int lack = (complete + 1) * part.quantity() - placed;
            if (complete < job.sets() && lack > 0) {
                lacks.add(new WholeSets.Lack(part.id(), lack));
            }
        }
        return lacks;
    }

    private @Nullable CuttingPlan planned(Job smaller) {
        if (!JobReview.review(smaller).isEmpty()) {
            return null;
        }
        try {
            CuttingPlan plan = planner.apply(smaller);
            work += plan.header().work();
            cutShort |= !plan.header().reproducible();
            return plan;
        } catch (PlanRejectedException e) {
            return null;
        }
    }

    /** So many sets; what the others would need is filled from the waste of their boards, as spares are. */
    private Job fewer(int sets) {
        List<Part> parts = new ArrayList<>();
        for (Part part : job.parts()) {
            boolean free = part.group() == null && !(part.making() instanceof Making.GlueUp);
            int rest = free ? (job.sets() - sets) * part.quantity() : 0;
            parts.add(part.withCounts(part.quantity(), rest));
        }
        return job.withSets(sets, parts).withShortage(Shortage.MOST_WOOD);
    }

    /** The plan of fewer sets as a plan of the job, with what the wood that is left over gives; as it is where that does not hold. */
    private CuttingPlan filled(CuttingPlan whole, CuttingPlan sets, int count) {
        List<Layout> layouts = new ArrayList<>(sets.layouts());
        Map<String, Integer> placed = placed(layouts);
        CuttingPlan rest = rest(layouts, placed);
        if (rest != null) {
            List<Layout> more = new ArrayList<>(layouts);
            rest.layouts().forEach(layout -> more.add(behind(layout, placed)));
            CuttingPlan plan = assembled(whole, more);
            if (PlanChecker.check(job, plan).isEmpty()) {
                return plan;
            }
        }
        CuttingPlan plan = assembled(whole, layouts);
        if (PlanChecker.check(job, plan).isEmpty()) {
            return plan;
        }
        CuttingPlan bare = planned(job.withSets(count, job.parts()).withShortage(Shortage.MOST_WOOD));
        CuttingPlan last = bare == null ? whole : assembled(whole, bare.layouts());
        return PlanChecker.check(job, last).isEmpty() ? last : whole;
    }

    /** Parts of the sets that stay incomplete, from boards on hand that are left. */
    private @Nullable CuttingPlan rest(List<Layout> layouts, Map<String, Integer> placed) {
        Map<String, Integer> used = new TreeMap<>();
        layouts.forEach(layout -> used.merge(layout.stock(), layout.repeat(), Integer::sum));
        List<StockItem.OnHand> left = new ArrayList<>();
        for (StockItem.OnHand item : job.onHand()) {
            int copies = item.quantity() - used.getOrDefault(item.id(), 0);
            if (copies > 0) {
                left.add(item.pieces(item.id(), copies, item.zones()));
            }
        }
        List<Part> parts = new ArrayList<>();
        for (Part part : job.parts()) {
            int missing = job.demand(part) - placed.getOrDefault(part.id(), 0);
            if (missing > 0 && part.group() == null && part.selection().place() == null) {
                parts.add(part.withCounts(missing, 0));
            }
        }
        return left.isEmpty() || parts.isEmpty()
                ? null
                : planned(job.withLists(parts, List.of(), left).withSets(1, parts));
    }

    private Map<String, Integer> placed(List<Layout> layouts) {
        Map<String, Integer> placed = new TreeMap<>();
        for (Part part : job.parts()) {
            int most = (int) layouts.stream()
                    .flatMap(layout -> layout.pieces().stream())
                    .filter(piece -> piece.part().equals(part.id()))
                    .flatMap(piece -> piece.numbers().stream())
                    .distinct()
                    .count();
            placed.put(part.id(), most);
        }
        return placed;
    }

    /** Numbers go on behind those that are placed. */
    private static Layout behind(Layout layout, Map<String, Integer> placed) {
        Map<PlacedPiece, PlacedPiece> pieces = new java.util.LinkedHashMap<>();
        for (PlacedPiece piece : layout.pieces()) {
            int before = placed.getOrDefault(piece.part(), 0);
            List<Want> labels = new ArrayList<>();
            for (int copy = 0; copy < layout.repeat(); copy++) {
                Want own = Want.of(piece, copy);
                labels.add(new Want(own.part(), own.number() + before, own.member()));
            }
            pieces.put(piece, Want.relabelled(piece, labels));
        }
        return new Layout(
                layout.stock(),
                layout.repeat(),
                layout.length(),
                layout.width(),
                layout.thickness(),
                List.copyOf(pieces.values()),
                layout.cuts(),
                layout.offcuts());
    }

    private CuttingPlan assembled(CuttingPlan whole, List<Layout> layouts) {
        Map<String, Integer> placed = placed(layouts);
        Map<String, Unplaced> reasons = new TreeMap<>();
        whole.unplaced().forEach(line -> reasons.putIfAbsent(line.part(), line));
        List<Unplaced> unplaced = new ArrayList<>();
        for (Part part : job.parts()) {
            int missing = job.demand(part) - placed.getOrDefault(part.id(), 0);
            if (missing > 0) {
                Unplaced line = reasons.get(part.id());
                unplaced.add(
                        line == null
                                ? new Unplaced(
                                        part.id(),
                                        missing,
                                        Unplaced.Reason.EXCLUDED_BY_RULE,
                                        null,
                                        null,
                                        "whole sets come first: add wood, or leave whenShort out to place most wood")
                                : new Unplaced(
                                        line.part(),
                                        missing,
                                        line.reason(),
                                        line.needs(),
                                        line.limit(),
                                        line.remedy()));
            }
        }
        return new LayoutAssembler(job, JobHash.of(job), whole)
                .assemble(new KeptBoards.Answer(layouts, unplaced, work, cutShort));
    }
}
