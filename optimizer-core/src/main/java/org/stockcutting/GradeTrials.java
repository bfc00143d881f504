package org.stockcutting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;
import org.stockcutting.wood.GradeMixes;
import org.stockcutting.wood.GradeMixes.Mix;
import org.stockcutting.wood.GroupRisk;
import org.stockcutting.wood.WoodRisk;

/**
 * The same job from each grade alone and from mixes, each with as many boards as are wanted to be sure. Mixes give the parts that ask most of the
 * wood, clear ones before knotty ones and long ones before short ones, to the dearer of two grades and the rest to the cheaper, or to what is
 * left of the dearer boards: for each pair of grades one mix for each place to draw that line. Better mixes may exist that are not of this kind.
 */
final class GradeTrials {

    /** Most mixes that are tried; where there are more, every second, third and so on of each pair. */
    private static final int MOST_MIXES = 12;

    private final Job job;
    private final Function<Job, CuttingPlan> planner;
    private final BiFunction<Job, CuttingPlan, WoodRisk> simulation;
    private final List<Part> parts;

    /**
     * @param job a job that passed its review
     */
    GradeTrials(Job job, Function<Job, CuttingPlan> planner, BiFunction<Job, CuttingPlan, WoodRisk> simulation) {
        this.job = job;
        this.planner = planner;
        this.simulation = simulation;
        this.parts = job.parts().stream()
                .filter(part -> choices(part).size() > 1)
                .sorted(Comparator.comparing(Part::woodClass)
                        .thenComparing(Part::length, Comparator.reverseOrder())
                        .thenComparing(Part::id))
                .toList();
    }

    /** Grades for sale that could serve a part. */
    private Set<String> choices(Part part) {
        Set<String> grades = new TreeSet<>();
        for (StockItem.ForSale item : job.forSale()) {
            String grade = item.grade();
            if (grade != null
                    && item.material().equals(part.material())
                    && part.selection().takes(grade)) {
                grades.add(grade);
            }
        }
        return grades;
    }

    /** The first so many parts from one grade, the others from another, or from what is left of the first. */
    private record Way(String first, String rest, int line) {}

    /** Two ways that come to the same are tried once. */
    private void add(Map<SortedMap<String, String>, Way> ways, Way way) {
        ways.putIfAbsent(split(way.first(), way.rest(), way.line()), way);
    }

    GradeMixes run() {
        Map<SortedMap<String, String>, Way> ways = new LinkedHashMap<>();
        List<String> grades = byPrice();
        new TreeSet<>(grades).forEach(grade -> add(ways, new Way(grade, grade, 0)));
        int pairs = Math.max(1, grades.size() * (grades.size() - 1) / 2);
        int step = Math.max(1, -Math.floorDiv(-pairs * Math.max(0, parts.size() - 1), MOST_MIXES));
        for (int dear = 0; dear < grades.size(); dear++) {
            for (int cheap = dear + 1; cheap < grades.size(); cheap++) {
                for (int line = 1; line < parts.size(); line += step) {
                    add(ways, new Way(grades.get(dear), grades.get(cheap), line));
                }
            }
        }
        List<Mix> mixes = ways.entrySet().stream()
                .map(way -> mix(way.getValue(), way.getKey()))
                .toList();
        return new GradeMixes(job.effort().seed(), job.wood().confidence(), mixes, best(mixes));
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

    /** Grades for sale, the dearest by the board foot first. */
    private List<String> byPrice() {
        Map<String, BigDecimal> dearest = new TreeMap<>();
        for (Part part : parts) {
            for (StockItem.ForSale item : job.forSale()) {
                String grade = item.grade();
                if (grade != null
                        && choices(part).contains(grade)
                        && item.material().equals(part.material())) {
                    dearest.merge(grade, perBoardFoot(item), BigDecimal::max);
                }
            }
        }
        List<String> grades = new ArrayList<>(dearest.keySet());
        grades.sort(Comparator.comparing((String grade) -> dearest.getOrDefault(grade, BigDecimal.ZERO))
                .reversed()
                .thenComparing(Comparator.naturalOrder()));
        return grades;
    }

    private static BigDecimal perBoardFoot(StockItem.ForSale item) {
        BigDecimal feet = Bill.boardFeet(item);
        return item.price() == null || feet.signum() == 0
                ? BigDecimal.ZERO
                : Bill.price(item).amount().divide(feet, 6, java.math.RoundingMode.HALF_UP);
    }

    /** The first parts from one grade, the others from another; a part that does not take its grade comes from the other one, or from any. */
    private SortedMap<String, String> split(String first, String rest, int line) {
        SortedMap<String, String> grades = new TreeMap<>();
        for (int p = 0; p < parts.size(); p++) {
            Set<String> own = choices(parts.get(p));
            String wanted = p < line ? first : rest;
            String other = p < line ? rest : first;
            String grade = own.contains(wanted) ? wanted : own.contains(other) ? other : null;
            if (grade != null) {
                grades.put(parts.get(p).id(), grade);
            }
        }
        return grades;
    }

    private Mix mix(Way way, SortedMap<String, String> grades) {
        List<Part> graded = job.parts().stream()
                .map(part -> {
                    String grade = grades.get(part.id());
                    return grade == null
                            ? part
                            : part.withSelection(part.selection().withGrades(allowed(part, way, grade)));
                })
                .toList();
        Job one = job.withLists(graded, job.forSale(), job.onHand());
        CuttingPlan plan = planner.apply(one);
        Status status = plan.header().status();
        if (status != Status.OPTIMAL && status != Status.FEASIBLE) {
            return new Mix(grades, null, null, 0, null);
        }
        WoodRisk risk = simulation.apply(one, plan);
        int boards = risk.groups().stream()
                .mapToInt((GroupRisk group) -> group.needed() + group.take())
                .sum();
        return new Mix(grades, plan.cost(), cost(plan.cost(), risk), boards, risk.chance());
    }

    /** Parts of the cheaper grade may come from what is left of the dearer boards too. */
    private List<String> allowed(Part part, Way way, String grade) {
        boolean both = grade.equals(way.rest()) && choices(part).contains(way.first());
        return both ? List.of(grade, way.first()) : List.of(grade);
    }

    private static @Nullable Money cost(@Nullable Money planned, WoodRisk risk) {
        Money extra = risk.extraCost();
        return planned == null || extra == null || !risk.reached() ? null : planned.plus(extra);
    }
}
