package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stockcutting.GradeFamily.Way;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.solve.ComponentSplitter;
import org.stockcutting.stock.Money;
import org.stockcutting.wood.GradeMixes;
import org.stockcutting.wood.GradeMixes.Family;
import org.stockcutting.wood.GradeMixes.Mix;
import org.stockcutting.wood.GroupRisk;
import org.stockcutting.wood.WoodRisk;

/**
 * The same job from each grade alone and from mixes, each with as many boards as are wanted to be sure. Parts that share wood are a family; each is
 * tried by itself, and then the whole job with the cheapest of each.
 */
final class GradeTrials {

    private final Job job;
    private final Function<Job, CuttingPlan> planner;
    private final BiFunction<Job, CuttingPlan, WoodRisk> simulation;

    /**
     * @param job a job that passed its review, lists sorted by id; boards of random size are left aside
     */
    GradeTrials(Job job, Function<Job, CuttingPlan> planner, BiFunction<Job, CuttingPlan, WoodRisk> simulation) {
        this.job = job.withRandom(List.of());
        this.planner = planner;
        this.simulation = simulation;
    }

    GradeMixes run() {
        List<GradeFamily> members = ComponentSplitter.split(job, BlankPlanner.plan(job), JobOrder.stock(job)).stream()
                .map(component -> new GradeFamily(job, component))
                .filter(GradeFamily::hasChoice)
                .toList();
        List<Family> families = new ArrayList<>();
        Map<String, Part> graded = new TreeMap<>();
        SortedMap<String, String> grades = new TreeMap<>();
        boolean reached = !members.isEmpty();
        for (GradeFamily member : members) {
            List<Way> ways = member.ways();
            List<Mix> mixes =
                    ways.stream().map(way -> mix(way.grades(), member.job(way))).toList();
            int best = best(mixes);
            families.add(new Family(member.partIds(), mixes, best));
            reached &= best >= 0;
            if (best >= 0) {
                member.job(ways.get(best)).parts().forEach(part -> graded.put(part.id(), part));
                grades.putAll(mixes.get(best).grades());
            }
        }
        Mix together = reached ? together(families, grades, graded) : null;
        return new GradeMixes(job.effort().seed(), job.wood().confidence(), families, together);
    }

    private Mix together(List<Family> families, SortedMap<String, String> grades, Map<String, Part> graded) {
        Family first = families.get(0);
        if (first.parts().size() == job.parts().size()) {
            return first.mixes().get(first.best());
        }
        List<Part> parts = job.parts().stream()
                .map(part -> graded.getOrDefault(part.id(), part))
                .toList();
        return mix(grades, job.withLists(parts, job.forSale(), job.onHand()));
    }

    private static int best(List<Mix> mixes) {
        int best = -1;
        for (int i = 0; i < mixes.size(); i++) {
            Money cost = mixes.get(i).cost();
            Money least = best < 0 ? null : mixes.get(best).cost();
            if (cost != null && (least == null || cost.compareTo(least) < 0)) {
                best = i;
            }
        }
        return best;
    }

    private Mix mix(SortedMap<String, String> grades, Job one) {
        CuttingPlan plan = planner.apply(one);
        Status status = plan.header().status();
        if (status != Status.OPTIMAL && status != Status.FEASIBLE) {
            return new Mix(grades, null, null, null, 0, null);
        }
        WoodRisk risk = simulation.apply(one, plan);
        int boards = risk.groups().stream()
                .mapToInt((GroupRisk group) -> group.needed() + group.take())
                .sum();
        Money sure = risk.reached() ? sum(plan.cost(), risk.extraCost()) : null;
        return new Mix(grades, plan.cost(), sum(plan.cost(), risk.averageExtra()), sure, boards, risk.chance());
    }

    private static @Nullable Money sum(@Nullable Money planned, @Nullable Money extra) {
        return planned == null || extra == null ? null : planned.plus(extra);
    }
}
