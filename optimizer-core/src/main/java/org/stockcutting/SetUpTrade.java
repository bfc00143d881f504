package org.stockcutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.solve.Solver;
import org.stockcutting.stock.Money;

/**
 * Wastes a little to save set-ups. Plans of the job in narrower shops, with less for sale, fewer changes of cut direction or nothing
 * ripped that is sold at its width, are plans of the job itself: they cost more and may be sawn at fewer settings. Each step takes the
 * narrowing with the least cost and set-ups together and narrows on from there. All steps together may take as much work as the plan.
 *
 * <p>Which plans have the fewest set-ups at a cost is not proved: every row of the table was found and checked, and that is all. The bound
 * of the plan that is returned stays that of its cost.
 */
final class SetUpTrade {

    private static final long LEAST_WORK = 2_000;
    /** One step narrows what is there, the next what is left; more have gained nothing in any job that was tried. */
    private static final int MOST_STEPS = 4;

    private final Solver solver;
    private final Job job;
    private final Money price;
    private final CuttingPlan first;
    private final CancelToken cancel;
    private final List<Found> found = new ArrayList<>();
    private long work;
    private boolean reproducible = true;

    /** A plan and the job, narrowed or not, that it was made for. */
    private record Found(Job job, CuttingPlan plan, Money cost) {

        int setUps() {
            return plan.derived().setUps();
        }
    }

    private SetUpTrade(Solver solver, Job job, Money price, CuttingPlan plan, CancelToken cancel) {
        this.solver = solver;
        this.job = job;
        this.price = price;
        this.first = plan;
        this.cancel = cancel;
    }

    /** The plan itself where set-ups have no price, or something has no wood; else the one with the least cost and set-ups together. */
    static CuttingPlan best(Solver solver, Job job, CuttingPlan plan, CancelToken cancel) {
        Money price = job.shop().setUpPrice();
        Money cost = plan.cost();
        if (price == null
                || cost == null
                || !plan.unplaced().isEmpty()
                || plan.layouts().isEmpty()) {
            return plan;
        }
        return new SetUpTrade(solver, job, price, plan, cancel).traded(cost);
    }

    private CuttingPlan traded(Money cost) {
        Found here = new Found(job, first, cost);
        found.add(here);
        long share = all() / MOST_STEPS;
        for (int step = 0; step < MOST_STEPS; step++) {
            Found next = narrowed(here, share);
            if (next == null || worth(next).compareTo(worth(here)) > 0) {
                break;
            }
            here = next;
        }
        List<Found> front = front();
        Found chosen = front.stream()
                .min(Comparator.comparing(this::worth).thenComparing(Found::cost))
                .orElseThrow();
        List<TradeOff.Row> rows = front.stream()
                .map(one -> new TradeOff.Row(one.cost(), one.setUps(), one == chosen))
                .toList();
        CuttingPlan plan = chosen.plan() == first ? withWork(first) : lifted(chosen.plan());
        return plan.withDerived(plan.derived().withTradeOff(new TradeOff(rows)));
    }

    private Money worth(Found one) {
        return one.cost().plus(price.times(one.setUps()));
    }

    /** The best of all plans of the job made narrower in one respect, or null where none places everything. */
    private @Nullable Found narrowed(Found here, long share) {
        List<Job> narrower = Narrowing.all(here.job(), here.plan());
        Found best = null;
        for (Job one : narrower) {
            Found tried = tried(one, share / narrower.size());
            if (tried != null && (best == null || worth(tried).compareTo(worth(best)) < 0)) {
                best = tried;
            }
        }
        return best;
    }

    private @Nullable Found tried(Job narrow, long share) {
        if (cancel.isCancelled()) {
            return null;
        }
        Effort own = job.effort();
        Effort effort = new Effort(Math.max(LEAST_WORK, share), own.seconds(), own.seed(), own.threads());
        CuttingPlan plan = new PlanningRun(narrow.withEffort(effort), ProgressListener.NONE, cancel).run(solver);
        work += plan.header().work();
        reproducible &= plan.header().reproducible();
        Money cost = plan.cost();
        if (cost == null || !plan.unplaced().isEmpty()) {
            return null;
        }
        Found tried = new Found(narrow, plan, cost);
        found.add(tried);
        return tried;
    }

    /** Plans that no other one beats in both, the cheapest first. */
    private List<Found> front() {
        List<Found> sorted = new ArrayList<>(found);
        sorted.sort(Comparator.comparing(Found::cost).thenComparingInt(Found::setUps));
        List<Found> front = new ArrayList<>();
        for (Found one : sorted) {
            if (front.isEmpty() || one.setUps() < front.get(front.size() - 1).setUps()) {
                front.add(one);
            }
        }
        return front;
    }

    /** As much as the plan itself may take; where only the clock limits, a step counts as a microsecond. */
    private long all() {
        Effort effort = job.effort();
        Long limit = effort.work();
        if (limit != null) {
            return limit;
        }
        Integer seconds = effort.seconds();
        return seconds == null ? Effort.DEFAULT_WORK : seconds * 1_000_000L;
    }

    /** The layouts of a narrowed job as a plan of the job itself, with its bound. */
    private CuttingPlan lifted(CuttingPlan narrow) {
        KeptBoards.Answer answer =
                new KeptBoards.Answer(narrow.layouts(), List.of(), work, !reproducible || cancel.isCancelled());
        return new LayoutAssembler(job, first.header().jobHash(), first).assemble(answer);
    }

    private CuttingPlan withWork(CuttingPlan plan) {
        return plan.withHeader(plan.header().after(work, reproducible && !cancel.isCancelled()));
    }
}
