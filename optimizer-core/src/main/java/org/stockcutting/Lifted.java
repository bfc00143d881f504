package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.job.Rule;
import org.stockcutting.job.Rules;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.part.Part;
import org.stockcutting.plan.Comparison.Limit;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.stock.StockItem;

/**
 * A job without one of its limits.
 *
 * @param limit which kind
 * @param name group or stock that it is about, or null
 * @param job the job without it
 */
record Lifted(Limit limit, @Nullable String name, Job job) {

    /** Every limit of the job that can be lifted, lists sorted as the job's. */
    static List<Lifted> all(Job job) {
        List<Lifted> lifted = new ArrayList<>();
        Length car = job.shop().carLength();
        if (car != null && job.forSale().stream().anyMatch(item -> item.length().isMoreThan(car))) {
            lifted.add(
                    new Lifted(Limit.CAR_LENGTH, null, job.withShop(job.shop().withCarLength(null))));
        }
        SawLimits limits = job.shop().limits();
        if (limits.stages() != null) {
            lifted.add(new Lifted(Limit.STAGES, null, saws(job, null, limits.firstCut())));
        }
        if (limits.firstCut() != SawLimits.FirstCut.ANY) {
            lifted.add(new Lifted(Limit.FIRST_CUT, null, saws(job, limits.stages(), SawLimits.FirstCut.ANY)));
        }
        for (Rule rule : Rules.of(job)) {
            lifted.add(new Lifted(Limit.GROUP, rule.name(), without(job, rule.name())));
        }
        for (Part part : job.parts()) {
            if (part.selection().cutFrom() != null) {
                lifted.add(new Lifted(Limit.CUT_FROM, part.id(), anywhere(job, part.id())));
            }
        }
        for (StockItem.ForSale item : job.forSale()) {
            if (item.available() != null) {
                lifted.add(new Lifted(Limit.AVAILABLE, item.id(), unlimited(job, item.id())));
            }
        }
        return lifted;
    }

    static SortedMap<String, BigFraction> duals(List<SolvedComponent> solved) {
        SortedMap<String, BigFraction> duals = new TreeMap<>();
        solved.forEach(one -> duals.putAll(one.duals()));
        return duals;
    }

    private static Job saws(Job job, @Nullable Integer stages, SawLimits.FirstCut firstCut) {
        SawLimits old = job.shop().limits();
        SawLimits limits = new SawLimits(
                old.ripCapacity(), old.longestRip(), old.crosscutCapacity(), stages, firstCut, old.minimumPiece());
        return job.withShop(job.shop().withLimits(limits));
    }

    private static Job without(Job job, String group) {
        return parts(
                job,
                part -> group.equals(part.group()) ? part.line(part.id(), part.quantity(), part.spares(), null) : part);
    }

    private static Job anywhere(Job job, String id) {
        return parts(
                job,
                part -> part.id().equals(id)
                        ? part.withSelection(part.selection().withCutFrom(null))
                        : part);
    }

    private static Job parts(Job job, UnaryOperator<Part> change) {
        return job.withLists(job.parts().stream().map(change).toList(), job.forSale(), job.onHand());
    }

    private static Job unlimited(Job job, String id) {
        List<StockItem.ForSale> forSale = job.forSale().stream()
                .map(item -> item.id().equals(id) ? item.withAvailable(null) : item)
                .toList();
        return job.withLists(job.parts(), forSale, job.onHand());
    }
}
