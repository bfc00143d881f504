package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.job.Rule;
import org.stockcutting.job.Rules;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;

/** Splits a planned job into parts that share wood: what is bought by the plan and what is on hand, not everything for sale. */
final class Grouping {

    private final Job job;
    private final CuttingPlan plan;
    private final List<RoughPiece> pieces;
    private final List<StockItem> stock = new ArrayList<>();
    private final SortedMap<String, Integer> used = new TreeMap<>();
    private final int[] parent;

    private Grouping(Job job, CuttingPlan plan) {
        this.job = job;
        this.plan = plan;
        this.pieces = BlankPlanner.plan(job);
        plan.layouts().forEach(layout -> used.merge(layout.stock(), layout.repeat(), Integer::sum));
        job.forSale().stream().filter(item -> used.containsKey(item.id())).forEach(stock::add);
        stock.addAll(job.onHand());
        parent = new int[pieces.size() + stock.size()];
        Arrays.setAll(parent, i -> i);
    }

    /** Groups for which something is bought, in the order of their first part. */
    static List<Group> of(Job job, CuttingPlan plan) {
        Grouping grouping = new Grouping(job, plan);
        grouping.joinByFit();
        grouping.joinByRule();
        return grouping.collect();
    }

    private void joinByFit() {
        Fit fit = new Fit(job.shop());
        for (int p = 0; p < pieces.size(); p++) {
            for (int s = 0; s < stock.size(); s++) {
                if (fit.ways(pieces.get(p), stock.get(s)).any()) {
                    join(p, pieces.size() + s);
                }
            }
        }
    }

    private void joinByRule() {
        for (Rule rule : Rules.of(job)) {
            List<Integer> members = new ArrayList<>();
            for (int p = 0; p < pieces.size(); p++) {
                if (rule.parts().contains(pieces.get(p).part().id())) {
                    members.add(p);
                }
            }
            members.forEach(member -> join(members.get(0), member));
        }
    }

    private void join(int a, int b) {
        parent[root(b)] = root(a);
    }

    private int root(int node) {
        int at = node;
        while (parent[at] != at) {
            at = parent[at];
        }
        return at;
    }

    private List<Group> collect() {
        SortedMap<Integer, List<RoughPiece>> byRoot = new TreeMap<>();
        List<Integer> order = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            int root = root(p);
            if (!byRoot.containsKey(root)) {
                order.add(root);
            }
            byRoot.computeIfAbsent(root, key -> new ArrayList<>()).add(pieces.get(p));
        }
        List<Group> groups = new ArrayList<>();
        for (int root : order) {
            Group group = group(groups.size(), root, Objects.requireNonNull(byRoot.get(root)));
            if (!group.bought().isEmpty()) {
                groups.add(group);
            }
        }
        return groups;
    }

    private Group group(int number, int root, List<RoughPiece> own) {
        SortedMap<String, StockItem.ForSale> bought = new TreeMap<>();
        List<StockItem.OnHand> owned = new ArrayList<>();
        List<Layout> layouts = new ArrayList<>();
        for (int s = 0; s < stock.size(); s++) {
            StockItem item = stock.get(s);
            if (root(pieces.size() + s) == root) {
                if (item instanceof StockItem.ForSale forSale) {
                    bought.put(item.id(), forSale);
                } else if (item instanceof StockItem.OnHand onHand) {
                    owned.add(onHand);
                }
                plan.layouts().stream()
                        .filter(layout -> layout.stock().equals(item.id()))
                        .forEach(layouts::add);
            }
        }
        return Group.of(number, own, bought, used, owned, layouts);
    }
}
