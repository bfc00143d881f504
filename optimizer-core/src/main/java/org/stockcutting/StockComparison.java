package org.stockcutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.io.JobHash;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.ComparisonListener;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Difference;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.solve.Solver;
import org.stockcutting.solve.instance.Weights;
import org.stockcutting.stock.StockItem;

/** One job on its way through a comparison of its stock. */
final class StockComparison {

    /** Every pair is compared where there are at most this many entries. */
    static final int FEW = 6;

    private final Job job;
    private final Solver solver;
    private final CancelToken cancel;
    private final ComparisonBudget budget;
    private final List<ComponentTrials> components = new ArrayList<>();
    private final TreeMap<String, Settled> wholes = new TreeMap<>();
    private RoughBeside rough = RoughBeside.NONE;

    /** A choice, as its plan says it, with what stands behind it. */
    record Settled(Choice choice, Job job, CuttingPlan plan) {}

    /** @param job the job, lists sorted by id */
    StockComparison(Job job, Solver solver, CancelToken cancel) {
        this.job = job;
        this.solver = solver;
        this.cancel = cancel;
        this.budget = new ComparisonBudget(job.effort());
    }

    Comparison run(ComparisonListener listener) {
        List<SolvedComponent> solved =
                solver.solve(job, BlankPlanner.plan(job), JobOrder.stock(job), budget.first(), cancel, soFar -> {});
        solved.forEach(one -> components.add(new ComponentTrials(job, one, solver, budget, cancel)));
        LimitPrices limits = new LimitPrices(job, solver, budget, cancel);
        long used = solved.stream().mapToLong(SolvedComponent::work).sum();
        budget.share(used, searches() + limits.count());
        components.forEach(this::search);
        if (!job.random().isEmpty()) {
            rough = RoughBeside.of(job, new PlanningRun(job, ProgressListener.NONE, cancel).checked(solved(ids(job))));
        }
        List<Comparison.LimitPrice> prices = limits.prices(whole(ids(job)), solved(ids(job)), rough);
        List<Comparison.Section> sections = components.stream()
                .filter(one -> !one.stockIds().isEmpty() || !rough.serves(one.partIds()))
                .map(one -> section(one, listener))
                .toList();
        Comparison.Section whole = whole(listener);
        limits.tell(listener);
        long work = used
                + limits.work()
                + components.stream().mapToLong(ComponentTrials::work).sum();
        return new Comparison(
                job.name(),
                JobHash.of(job),
                job.goal(),
                !cancel.isCancelled() && isReproducible() && limits.isReproducible(),
                job.effort().seed(),
                work,
                Weights.VERSION,
                Optimizer.VERSION,
                sections,
                whole,
                prices,
                rough.estimates());
    }

    private boolean isReproducible() {
        return components.stream().allMatch(ComponentTrials::isReproducible);
    }

    private int searches() {
        int count = 0;
        for (ComponentTrials component : components) {
            count += subsets(component.stockIds()).size() + component.stockIds().size();
        }
        return count;
    }

    /** Large choices first: their plans serve small ones. */
    private void search(ComponentTrials component) {
        Set<List<String>> wanted = new LinkedHashSet<>();
        component.stockIds().forEach(id -> wanted.add(without(component.stockIds(), id)));
        wanted.addAll(subsets(component.stockIds()));
        subsets(ids(job)).forEach(subset -> wanted.add(within(subset, component.stockIds())));
        wanted.stream()
                .sorted(Comparator.comparingInt((List<String> subset) -> -subset.size()))
                .forEach(component::of);
        component.settle();
    }

    private static List<String> without(List<String> stock, String id) {
        return stock.stream().filter(other -> !other.equals(id)).toList();
    }

    private static List<String> within(List<String> subset, List<String> stock) {
        return subset.stream().filter(stock::contains).toList();
    }

    private static List<String> ids(Job of) {
        return of.forSale().stream().map(StockItem::id).sorted().toList();
    }

    /** Each entry alone, pairs where there are few, named subsets, all together last; nothing twice. */
    private List<List<String>> subsets(List<String> stock) {
        Set<List<String>> subsets = new LinkedHashSet<>();
        if (stock.size() > 1) {
            stock.forEach(id -> subsets.add(List.of(id)));
        }
        for (int i = 0; i < stock.size() && stock.size() <= FEW; i++) {
            for (int j = i + 1; j < stock.size(); j++) {
                subsets.add(List.of(stock.get(i), stock.get(j)));
            }
        }
        for (List<String> named : job.compare()) {
            List<String> here = within(List.copyOf(new TreeSet<>(named)), stock);
            if (!here.isEmpty()) {
                subsets.add(here);
            }
        }
        subsets.remove(stock);
        subsets.add(stock);
        return List.copyOf(subsets);
    }

    private Comparison.Section section(ComponentTrials component, ComparisonListener listener) {
        List<Choice> choices = new ArrayList<>();
        List<String> parts = component.partIds();
        for (List<String> subset : subsets(component.stockIds())) {
            choices.add(told(settled(component.of(subset)), parts, listener));
        }
        List<Comparison.Saving> savings = new ArrayList<>();
        List<String> stock = component.stockIds();
        for (String id : stock.size() > 1 ? stock : List.<String>of()) {
            Settled without = settled(component.of(without(stock, id)));
            Difference difference = rough.difference(
                    without.choice(), settled(component.of(stock)).choice(), parts);
            savings.add(new Comparison.Saving(id, told(without, parts, listener), difference));
        }
        return ranked(parts, choices, savings);
    }

    private Comparison.Section whole(ComparisonListener listener) {
        List<Choice> choices = new ArrayList<>();
        List<String> parts = job.parts().stream().map(Part::id).sorted().toList();
        subsets(ids(job)).forEach(subset -> choices.add(told(whole(subset), parts, listener)));
        return ranked(parts, choices, List.of());
    }

    private Choice told(Settled settled, List<String> parts, ComparisonListener listener) {
        Choice choice = rough.of(settled.choice(), parts);
        listener.onChoice(choice, settled.job(), settled.plan());
        return choice;
    }

    private static Comparison.Section ranked(
            List<String> parts, List<Choice> choices, List<Comparison.Saving> savings) {
        Ranking ranking = new Ranking(choices);
        return new Comparison.Section(parts, choices, ranking.best(), ranking.front(), savings);
    }

    /** The whole job with this stock: the best plan of each component, put together. */
    private Settled whole(List<String> stock) {
        Settled known = wholes.get(String.join("\n", stock));
        return known == null ? assembled(stock) : known;
    }

    private List<SolvedComponent> solved(List<String> stock) {
        List<SolvedComponent> solved = new ArrayList<>();
        for (ComponentTrials component : components) {
            solved.add(component.of(within(stock, component.stockIds())).solved());
        }
        return solved;
    }

    private Settled assembled(List<String> stock) {
        List<SolvedComponent> solved = solved(stock);
        List<StockItem.ForSale> toBuy =
                job.forSale().stream().filter(item -> stock.contains(item.id())).toList();
        Job with = job.withLists(job.parts(), toBuy, job.onHand());
        CuttingPlan plan = new PlanningRun(with, ProgressListener.NONE, cancel).checked(solved);
        Settled settled = new Settled(Choices.of(with, plan), with, plan);
        wholes.put(String.join("\n", stock), settled);
        return settled;
    }

    private static Settled settled(Trial trial) {
        return new Settled(Choices.of(trial.job(), trial.plan()), trial.job(), trial.plan());
    }
}
