package org.stockcutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.solve.Component;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.solve.Solver;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.stock.StockItem;

/**
 * The choices of stock for one component. What one search finds serves the others: a plan is a plan of every choice that has what it
 * buys, and worths that hold for more stock hold for less. So a choice is only searched where no plan at hand is known to be its best.
 */
final class ComponentTrials {

    private final Job job;
    private final Component component;
    private final Solver solver;
    private final ComparisonBudget budget;
    private final CancelToken cancel;
    private final TreeMap<String, Trial> trials = new TreeMap<>();
    private final TreeMap<String, SolvedComponent> searches = new TreeMap<>();
    private final Trial whole;
    private long work;

    /**
     * @param all the whole job, lists sorted by id
     * @param solved everything together, solved already
     */
    ComponentTrials(Job all, SolvedComponent solved, Solver solver, ComparisonBudget budget, CancelToken cancel) {
        this.component = solved.component();
        this.job = own(all, component);
        this.solver = solver;
        this.budget = budget;
        this.cancel = cancel;
        this.whole = Trial.of(job, solved, plan(job, solved));
        put(whole);
    }

    private static Job own(Job all, Component component) {
        List<Part> parts = component.pieces().stream().map(RoughPiece::part).toList();
        return all.withLists(parts, forSale(component.stock()), onHand(component.stock()));
    }

    private static List<StockItem.ForSale> forSale(List<StockItem> stock) {
        return stock.stream()
                .filter(StockItem.ForSale.class::isInstance)
                .map(StockItem.ForSale.class::cast)
                .toList();
    }

    private static List<StockItem.OnHand> onHand(List<StockItem> stock) {
        return stock.stream()
                .filter(StockItem.OnHand.class::isInstance)
                .map(StockItem.OnHand.class::cast)
                .toList();
    }

    List<String> partIds() {
        return job.parts().stream().map(Part::id).sorted().toList();
    }

    /** Ids of what can be bought for this component, sorted. */
    List<String> stockIds() {
        return whole.stock();
    }

    Trial whole() {
        return whole;
    }

    /** Steps of all searches but the first. */
    long work() {
        return work;
    }

    boolean isReproducible() {
        return trials.values().stream().noneMatch(trial -> trial.solved().cutShort())
                && searches.values().stream().noneMatch(SolvedComponent::cutShort);
    }

    /** The best plan known with this stock. */
    Trial of(List<String> stock) {
        Trial found = trials.get(key(stock));
        return found == null ? put(settled(stock)) : found;
    }

    /** Gives every choice the best of all plans that were found since. */
    void settle() {
        for (Trial trial : List.copyOf(trials.values())) {
            Trial better = bestWithin(trial.stock());
            if (better != null && better.isBetterThan(trial)) {
                put(adopted(better, trial.stock()));
            }
        }
    }

    private Trial put(Trial trial) {
        trials.put(key(trial.stock()), trial);
        return trial;
    }

    private static String key(List<String> stock) {
        return String.join("\n", stock);
    }

    private Trial settled(List<String> stock) {
        Trial near = bestWithin(stock);
        Trial known = near == null ? null : adopted(near, stock);
        // Where nothing that all together buys is left out, all together has been searched harder than this would be.
        boolean same = stock.containsAll(whole.bought()) && whole.isComplete();
        if (known != null && (same || known.isClosed())) {
            return known;
        }
        Trial searched = searched(stock);
        return known != null && known.isBetterThan(searched) ? adopted(known, stock) : searched;
    }

    /** The best plan so far that buys nothing else. */
    private @Nullable Trial bestWithin(List<String> stock) {
        Trial best = null;
        for (Trial trial : trials.values()) {
            if (stock.containsAll(trial.bought()) && (best == null || trial.isBetterThan(best))) {
                best = trial;
            }
        }
        return best;
    }

    private Trial searched(List<String> stock) {
        Job with = with(stock);
        List<StockItem> items = component.stock().stream()
                .filter(item -> item instanceof StockItem.OnHand || stock.contains(item.id()))
                .toList();
        List<SolvedComponent> parts = solver.solve(with, component.pieces(), items, budget.next(), cancel, soFar -> {});
        SolvedComponent merged = merged(new Component(component.pieces(), items), parts);
        work += merged.work();
        searches.put(key(stock), merged);
        return best(with, merged, merged);
    }

    /** A plan made for other stock as the plan of this stock. */
    private Trial adopted(Trial other, List<String> stock) {
        SolvedComponent from = other.solved();
        SolvedComponent search = searches.get(key(stock));
        boolean proved = search != null && search.provedPlacement();
        SolvedComponent mine = new SolvedComponent(
                from.component(),
                from.boards(),
                from.asCut(),
                from.duals(),
                from.rows(),
                search == null ? null : search.searchedBound(),
                proved,
                search == null ? 0 : search.work(),
                from.cutShort() || (search != null && search.cutShort()));
        return best(with(stock), mine, search == null ? whole.solved() : search);
    }

    /** With the best bound that own worths and those of everything together prove. */
    private Trial best(Job with, SolvedComponent boards, SolvedComponent search) {
        Trial best = trial(with, boards, search);
        if (!best.isClosed() && !search.duals().equals(whole.solved().duals())) {
            Trial other = trial(with, boards, whole.solved());
            boolean better = other.plan()
                            .objective()
                            .bound()
                            .compareTo(best.plan().objective().bound())
                    > 0;
            return better ? other : best;
        }
        return best;
    }

    private Trial trial(Job with, SolvedComponent boards, SolvedComponent worths) {
        BigInteger own = boards.searchedBound();
        BigInteger floor = whole.solved().searchedBound();
        SolvedComponent solved = withBound(boards, worths, own);
        Trial trial = Trial.of(with, solved, plan(with, solved));
        if (trial.isClosed() || !trial.isComplete() || floor == null || (own != null && floor.compareTo(own) <= 0)) {
            return trial;
        }
        // What no plan of all together undercuts, none of less stock does, if it makes everything.
        SolvedComponent floored = withBound(boards, worths, floor);
        return Trial.of(with, floored, plan(with, floored));
    }

    private static SolvedComponent withBound(
            SolvedComponent boards, SolvedComponent worths, @Nullable BigInteger searched) {
        return new SolvedComponent(
                boards.component(),
                boards.boards(),
                boards.asCut(),
                worths.duals(),
                worths.rows(),
                searched,
                boards.provedPlacement(),
                boards.work(),
                boards.cutShort());
    }

    private Job with(List<String> stock) {
        Set<String> wanted = Set.copyOf(stock);
        return job.withLists(
                job.parts(),
                job.forSale().stream()
                        .filter(item -> wanted.contains(item.id()))
                        .toList(),
                job.onHand());
    }

    private CuttingPlan plan(Job with, SolvedComponent solved) {
        return new PlanningRun(with, ProgressListener.NONE, cancel).checked(List.of(solved));
    }

    /** Less stock may fall into several components; here they are one again. */
    private static SolvedComponent merged(Component component, List<SolvedComponent> parts) {
        if (parts.size() == 1) {
            SolvedComponent only = parts.get(0);
            return new SolvedComponent(
                    component,
                    only.boards(),
                    only.asCut(),
                    only.duals(),
                    only.rows(),
                    only.searchedBound(),
                    only.provedPlacement(),
                    only.work(),
                    only.cutShort());
        }
        List<Board> boards = new ArrayList<>();
        List<Board> asCut = new ArrayList<>();
        SortedMap<String, BigFraction> duals = new TreeMap<>();
        BigInteger searched = BigInteger.ZERO;
        boolean proved = true;
        boolean bounded = true;
        boolean cutShort = false;
        long work = 0;
        for (SolvedComponent part : parts) {
            boards.addAll(part.boards());
            asCut.addAll(part.asCut());
            duals.putAll(part.duals());
            searched = part.searchedBound() == null ? searched : searched.add(part.searchedBound());
            // What no stock serves has nothing to be proved by search.
            boolean served = !part.component().stock().isEmpty();
            bounded &= part.searchedBound() != null;
            proved &= part.provedPlacement() || !served;
            cutShort |= part.cutShort();
            work += part.work();
        }
        return new SolvedComponent(component, boards, asCut, duals, bounded ? searched : null, proved, work, cutShort);
    }
}
