package org.stockcutting;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.solve.PieceWeight;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.stock.StockItem;

/**
 * One component with one choice of stock, solved.
 *
 * @param stock ids of what is for sale, sorted
 * @param job the component's parts, that stock, and what is on hand
 * @param solved boards and duals, as one component
 * @param plan the checked plan
 * @param missing finished volume that got no wood
 * @param bought ids of what the plan buys
 */
record Trial(
        List<String> stock, Job job, SolvedComponent solved, CuttingPlan plan, BigInteger missing, Set<String> bought) {

    static Trial of(Job job, SolvedComponent solved, CuttingPlan plan) {
        List<String> stock = job.forSale().stream().map(StockItem::id).sorted().toList();
        Set<String> bought = new TreeSet<>(stock);
        bought.retainAll(plan.layouts().stream().map(layout -> layout.stock()).collect(Collectors.toSet()));
        return new Trial(stock, job, solved, plan, missing(job, plan), bought);
    }

    /** Finished volume of what got no wood. */
    static BigInteger missing(Job job, CuttingPlan plan) {
        Map<String, Part> parts = job.parts().stream().collect(Collectors.toMap(Part::id, part -> part));
        BigInteger volume = BigInteger.ZERO;
        for (Unplaced unplaced : plan.unplaced()) {
            Part part = parts.get(unplaced.part());
            if (part != null) {
                volume = volume.add(
                        PieceWeight.finished(part).times(unplaced.quantity()).cubicNanometres());
            }
        }
        return volume;
    }

    boolean isComplete() {
        return plan.unplaced().isEmpty();
    }

    /** True if nothing better can be found: the value meets a bound, certified or searched. */
    boolean isClosed() {
        BigInteger value = plan.objective().value();
        return isComplete()
                && (value.equals(plan.objective().bound())
                        || value.equals(plan.objective().searchedBound()));
    }

    /** More wood placed, or as much at a lower value. */
    boolean isBetterThan(Trial other) {
        int more = other.missing.compareTo(missing);
        return more > 0
                || (more == 0
                        && plan.objective()
                                        .value()
                                        .compareTo(other.plan.objective().value())
                                < 0);
    }
}
