package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison.LimitPrice;
import org.stockcutting.plan.ComparisonListener;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Difference;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.solve.Solver;

/**
 * What the shop's limits cost: the whole job is planned without each of them. The plan within the limit is a plan without it too, so
 * lifting a limit never looks like a loss.
 */
final class LimitPrices {

    private final Job job;
    private final Solver solver;
    private final ComparisonBudget budget;
    private final CancelToken cancel;
    private final List<Lifted> lifted;
    private final List<StockComparison.Settled> settled = new ArrayList<>();
    private long work;
    private boolean cutShort;

    /** @param job the job with all its limits */
    LimitPrices(Job job, Solver solver, ComparisonBudget budget, CancelToken cancel) {
        this.job = job;
        this.solver = solver;
        this.budget = budget;
        this.cancel = cancel;
        this.lifted = Lifted.all(job);
    }

    /** How many searches it takes. */
    int count() {
        return lifted.size();
    }

    long work() {
        return work;
    }

    boolean isReproducible() {
        return !cutShort;
    }

    /**
     * @param all everything for sale, within the limits
     * @param within what that choice is made of
     * @param rough what is left to boards of random size
     */
    List<LimitPrice> prices(StockComparison.Settled all, List<SolvedComponent> within, RoughBeside rough) {
        List<String> parts = job.parts().stream().map(Part::id).toList();
        List<LimitPrice> prices = new ArrayList<>();
        for (Lifted limit : lifted) {
            StockComparison.Settled without = without(limit.job(), within);
            Choice choice = rough.of(without.choice(), parts);
            settled.add(new StockComparison.Settled(choice, without.job(), without.plan()));
            Difference difference = rough.difference(all.choice(), without.choice(), parts);
            prices.add(new LimitPrice(limit.limit(), limit.name(), choice, difference));
        }
        return prices;
    }

    void tell(ComparisonListener listener) {
        settled.forEach(one -> listener.onChoice(one.choice(), one.job(), one.plan()));
    }

    private StockComparison.Settled without(Job free, List<SolvedComponent> within) {
        List<SolvedComponent> solved =
                solver.solve(free, BlankPlanner.plan(free), JobOrder.stock(free), budget.next(), cancel, soFar -> {});
        work += solved.stream().mapToLong(SolvedComponent::work).sum();
        cutShort |= solved.stream().anyMatch(SolvedComponent::cutShort);
        CuttingPlan own = plan(free, solved);
        CuttingPlan old = kept(free, within, solved);
        CuttingPlan best = old != null && isBetter(free, old, own) ? old : own;
        return new StockComparison.Settled(Choices.of(free, best), free, best);
    }

    private static boolean isBetter(Job free, CuttingPlan one, CuttingPlan other) {
        int more = Trial.missing(free, other).compareTo(Trial.missing(free, one));
        return more > 0
                || (more == 0
                        && one.objective().value().compareTo(other.objective().value()) < 0);
    }

    private CuttingPlan plan(Job free, List<SolvedComponent> solved) {
        return new PlanningRun(free, ProgressListener.NONE, cancel).checked(solved);
    }

    /** The plan within the limit with the bound of the job without it; null if it does not hold there. */
    private @Nullable CuttingPlan kept(Job free, List<SolvedComponent> within, List<SolvedComponent> solved) {
        List<SolvedComponent> old = new ArrayList<>();
        for (SolvedComponent one : within) {
            old.add(new SolvedComponent(
                    one.component(), one.boards(), one.asCut(), Lifted.duals(solved), null, false, 0, one.cutShort()));
        }
        try {
            return plan(free, old);
        } catch (PlanRejectedException e) {
            return null;
        }
    }
}
