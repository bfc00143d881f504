package org.stockcutting.wood;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;

/** How many of each group to take, so that the whole job is finished with the wanted chance. */
final class Choice {
    private final Job job;
    private final int trials;
    private final List<Outcome> outcomes;
    private final int[] take;

    Choice(Job job, List<Outcome> outcomes) {
        this.job = job;
        this.trials = job.wood().trials();
        this.outcomes = outcomes;
        this.take = new int[outcomes.size()];
    }

    WoodRisk risk() {
        while (!isReached() && addOne()) {
            // One board more, where it helps most.
        }
        List<GroupRisk> groups = new ArrayList<>();
        for (int g = 0; g < outcomes.size(); g++) {
            groups.add(group(g));
        }
        return new WoodRisk(
                job.effort().seed(),
                job.wood().confidence(),
                groups,
                Chance.of(finished(take), trials),
                Chance.of(goesBack(), trials),
                extraCost(),
                averageExtra(),
                isReached());
    }

    private boolean isReached() {
        return BigDecimal.valueOf(finished(take))
                        .compareTo(job.wood().confidence().multiply(BigDecimal.valueOf(trials)))
                >= 0;
    }

    private int finished(int[] more) {
        int count = 0;
        for (int t = 0; t < trials; t++) {
            count += finishes(t, more) ? 1 : 0;
        }
        return count;
    }

    private boolean finishes(int trial, int[] more) {
        for (int g = 0; g < more.length; g++) {
            if (outcomes.get(g).least()[trial] > more[g]) {
                return false;
            }
        }
        return true;
    }

    private boolean addOne() {
        int best = -1;
        long bestGain = -1;
        for (int g = 0; g < take.length; g++) {
            if (take[g] < outcomes.get(g).most()) {
                int[] tried = take.clone();
                tried[g]++;
                // The whole job counts first; the group's own trials break ties, so that two that need each other
                // both grow.
                long gain = (long) finished(tried) * (trials + 1L)
                        + outcomes.get(g).finished(tried[g])
                        - outcomes.get(g).finished(take[g]);
                if (gain > bestGain) {
                    bestGain = gain;
                    best = g;
                }
            }
        }
        if (best < 0) {
            return false;
        }
        take[best]++;
        return true;
    }

    private int goesBack() {
        int count = 0;
        for (int t = 0; t < trials; t++) {
            boolean left = false;
            for (int g = 0; g < take.length; g++) {
                left |= outcomes.get(g).least()[t] < take[g];
            }
            count += left && finishes(t, take) ? 1 : 0;
        }
        return count;
    }

    private @Nullable Money extraCost() {
        Money sum = Money.ofMinor(0, job.writing().currency());
        for (int g = 0; g < take.length; g++) {
            Money extra = extraCost(outcomes.get(g).group(), take[g]);
            if (extra == null) {
                return null;
            }
            sum = sum.plus(extra);
        }
        return sum;
    }

    /** Rounded half up; the few trials that nothing finished count with the most that was tried. */
    private @Nullable Money averageExtra() {
        if (!isReached()) {
            return null;
        }
        long all = 0;
        for (Outcome outcome : outcomes) {
            SortedMap<Integer, Long> times = new TreeMap<>();
            for (int least : outcome.least()) {
                times.merge(Math.min(least, outcome.most()), 1L, Long::sum);
            }
            for (Map.Entry<Integer, Long> entry : times.entrySet()) {
                Money extra = extraCost(outcome.group(), entry.getKey());
                if (extra == null) {
                    return null;
                }
                all = Math.addExact(all, Math.multiplyExact(extra.minorUnits(), entry.getValue()));
            }
        }
        long rounded = Math.floorDiv(Math.addExact(Math.multiplyExact(2L, all), trials), 2L * trials);
        return Money.ofMinor(rounded, job.writing().currency());
    }

    private static @Nullable Money extraCost(Group group, int more) {
        StockItem.ForSale stock = group.bought().get(group.extra());
        int planned = group.quantities().get(group.extra());
        Money before = Bill.purchase(stock, planned, false).total();
        Money after = Bill.purchase(stock, planned + more, false).total();
        return before == null || after == null
                ? null
                : Money.ofMinor(after.minorUnits() - before.minorUnits(), after.currency());
    }

    private GroupRisk group(int g) {
        Outcome outcome = outcomes.get(g);
        Group group = outcome.group();
        List<GroupRisk.Row> rows = new ArrayList<>();
        for (int more = 0; more <= Math.max(take[g], outcome.most()); more++) {
            rows.add(new GroupRisk.Row(group.needed() + more, more, Chance.of((int) outcome.finished(more), trials)));
        }
        List<GroupRisk.Planned> planned = new ArrayList<>();
        for (int k = 0; k < group.bought().size(); k++) {
            planned.add(new GroupRisk.Planned(
                    group.bought().get(k).id(), group.quantities().get(k)));
        }
        return new GroupRisk(
                group.pieces().stream().map(piece -> piece.part().id()).toList(),
                planned,
                group.bought().get(group.extra()).id(),
                outcome.models(),
                rows,
                take[g]);
    }
}
