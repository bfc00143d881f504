package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.ComparisonReader;
import org.stockcutting.io.ComparisonWriter;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Choice;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Status;

/** A comparison with every plan behind it, and what must hold of every one. */
record Compared(Job job, Comparison comparison, List<Told> told) {

    /** A choice as the listener heard it. */
    record Told(Choice choice, Job job, CuttingPlan plan) {}

    static Compared of(Optimizer optimizer, Job job) {
        List<Told> told = new ArrayList<>();
        Comparison comparison = optimizer.compare(
                job, job.effort(), (choice, with, plan) -> told.add(new Told(choice, with, plan)), new CancelToken());
        return new Compared(job, comparison, told);
    }

    void holds(String what) {
        Map<String, Integer> rough = new TreeMap<>();
        comparison
                .estimates()
                .forEach(estimate ->
                        estimate.parts().forEach(part -> rough.merge(part.part(), part.quantity(), Integer::sum)));
        told.forEach(one -> planHolds(what, one, rough));
        Stream.concat(comparison.components().stream(), Stream.of(comparison.whole()))
                .forEach(section -> sectionHolds(what, section));
        comparison
                .limits()
                .forEach(limit -> assertThat(limit.difference().saves() == null
                                || limit.difference().saves().signum() >= 0)
                        .as("%s: lifting %s never looks like a loss", what, limit.limit())
                        .isTrue());
        String document = new ComparisonWriter(job).write(comparison);
        Comparison back = new ComparisonReader(job).read(document).orThrow();
        assertThat(back).as(what).isEqualTo(comparison);
        assertThat(new ComparisonWriter(job).write(back)).as(what).isEqualTo(document);
    }

    private static void planHolds(String what, Told one, Map<String, Integer> rough) {
        CuttingPlan plan = one.plan();
        assertThat(PlanChecker.check(one.job(), plan))
                .as("%s %s", what, one.choice().stock())
                .isEmpty();
        assertThat(one.choice().objective()).isEqualTo(plan.objective());
        assertThat(one.choice().setUps()).isEqualTo(plan.derived().setUps());
        assertThat(plan.layouts())
                .as("%s buys only what is for sale", what)
                .allMatch(layout -> one.choice().stock().contains(layout.stock())
                        || one.job().onHand().stream()
                                .anyMatch(item -> item.id().equals(layout.stock())));
        boolean rest = plan.unplaced().stream()
                .allMatch(line -> Integer.valueOf(line.quantity()).equals(rough.get(line.part())));
        assertThat(one.choice().isComplete())
                .as("%s %s", what, one.choice().stock())
                .isEqualTo(rest);
        assertThat(one.choice().status() == Status.OPTIMAL)
                .as("%s: with an estimate beside it nothing is optimal", what)
                .isEqualTo(plan.header().status() == Status.OPTIMAL);
        BigInteger bound = plan.objective().bound();
        assertThat(bound)
                .as("%s %s", what, one.choice().stock())
                .isLessThanOrEqualTo(plan.objective().value());
    }

    private static void sectionHolds(String what, Comparison.Section section) {
        for (Choice choice : section.choices()) {
            for (Choice wider : section.choices()) {
                if (choice.isComplete() && wider.stock().containsAll(choice.stock())) {
                    assertThat(wider.isComplete())
                            .as("%s: what %s makes, %s makes", what, choice.stock(), wider.stock())
                            .isTrue();
                    assertThat(wider.objective().value())
                            .as("%s: %s beats %s", what, choice.stock(), wider.stock())
                            .isLessThanOrEqualTo(choice.objective().value());
                }
            }
        }
        List<Integer> named = new ArrayList<>(section.front());
        Stream.of(
                        section.best().cost(),
                        section.best().waste(),
                        section.best().boards(),
                        section.best().setUps())
                .forEach(best -> {
                    if (best != null) {
                        named.add(best);
                    }
                });
        assertThat(named)
                .as("%s: what leaves parts out is never best", what)
                .allMatch(index -> section.choices().get(index).isComplete());
        assertThat(section.front().isEmpty())
                .isEqualTo(section.choices().stream().noneMatch(Choice::isComplete));
        for (Comparison.Saving saving : section.savings()) {
            assertThat(saving.without().stock()).doesNotContain(saving.stock());
            BigInteger saves = saving.difference().saves();
            if (saves != null) {
                assertThat(saves).isNotNegative();
                assertThat(saving.difference().atLeast()).isLessThanOrEqualTo(saves);
                assertThat(saving.difference().atMost()).isGreaterThanOrEqualTo(saves);
            }
        }
    }
}
