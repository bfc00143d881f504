package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.CsvJobReader;
import org.stockcutting.io.CsvTables;
import org.stockcutting.io.JobReader;
import org.stockcutting.io.JobWriter;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobBuilder;
import org.stockcutting.job.JobReview;
import org.stockcutting.job.Rule;
import org.stockcutting.job.Rules;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Binding;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.part.Selection;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Violation;

/**
 * Every shop rule has its faces: the search keeps it and tells its price, the checker refuses a plan that breaks it, the bound holds
 * without it. The sentence of the search is tested beside the other constraints.
 */
class RuleFacesTest {

    /** A job for every kind of rule in which the cheapest plan breaks it. Sums by hand in the comments. */
    private static final Map<Class<? extends Rule>, Job> JOBS = Map.of(
            // Three rails fit 96 in; a set of four does not, but two sets share nothing: 47 and 47 leave a board a set.
            Rule.SameBoard.class,
                    job(2, part("long", 1, "47", Binding.SAME_BOARD), part("short", 1, "30", Binding.SAME_BOARD)),
            // As above: one after the other, 47 and 30 leave a board a set.
            Rule.Sequence.class,
                    job(2, part("long", 1, "47", Binding.SEQUENCE), part("short", 1, "30", Binding.SEQUENCE)),
            // Six of 30 in take two boards of three, or three boards of one pair.
            Rule.Pairs.class, job(1, part("leg", 6, "30", Binding.PAIRS)));

    private static Part part(String id, int quantity, String length, Binding binding) {
        JobBuilder builder = JobBuilder.inches("part");
        return new Part(
                        id,
                        quantity,
                        builder.length(length),
                        new Section.Nominal("2x4"),
                        "wood",
                        null,
                        WoodClass.CLEAR,
                        0,
                        new Making.AsCut(),
                        "mates",
                        null)
                .withSelection(Selection.NONE.withBinding(binding));
    }

    private static Job job(int sets, Part... parts) {
        JobBuilder builder = JobBuilder.inches("faces")
                .material("wood")
                .sets(sets)
                .effort(new Effort(300_000L, null, 1, 1))
                .board("2x4-8", "2x4", "8'", "4.00");
        for (Part part : parts) {
            builder.part(part);
        }
        return builder.build();
    }

    private static Job without(Job job) {
        List<Part> free = job.parts().stream()
                .map(part -> part.line(part.id(), part.quantity(), part.spares(), null))
                .toList();
        return job.withLists(free, job.forSale(), job.onHand());
    }

    static Stream<Class<?>> kinds() {
        return Arrays.stream(Rule.class.getPermittedSubclasses());
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void everyRuleIsKeptCheckedPricedAndLeftOutOfTheBound(Class<?> kind) {
        Job job = JOBS.get(kind);
        assertThat(job).as("a job for %s", kind.getSimpleName()).isNotNull();
        assertThat(JobReview.review(job)).isEmpty();
        assertThat(Rules.of(job)).singleElement().isInstanceOf(kind);

        CuttingPlan kept = new Optimizer().plan(job);
        assertThat(kept.unplaced()).isEmpty();
        assertThat(PlanChecker.check(job, kept)).isEmpty();

        Job free = without(job);
        CuttingPlan broken = new Optimizer().plan(free);
        assertThat(PlanChecker.check(job, broken)).extracting(Violation::cause).contains("group");
        assertThat(kept.objective().bound()).isEqualTo(broken.objective().bound());

        Comparison comparison = new Optimizer().compare(job);
        assertThat(comparison.limits()).anySatisfy(price -> {
            assertThat(price.limit()).isEqualTo(Comparison.Limit.GROUP);
            assertThat(price.name()).isEqualTo("mates");
        });
    }

    @Test
    void matesThatNoBoardHoldsAreNamed() {
        Job job = job(1, part("post", 2, "60", Binding.PAIRS));
        assertThat(new Optimizer().plan(job).unplaced())
                .extracting(Unplaced::reason)
                .containsExactly(Unplaced.Reason.EXCLUDED_BY_RULE);
        assertThat(new Optimizer().plan(without(job)).unplaced()).isEmpty();
    }

    @Test
    void pairsOfTwoPartsShareNumbers() {
        Job job = job(2, part("left", 2, "50", Binding.PAIRS), part("right", 2, "40", Binding.PAIRS));
        CuttingPlan plan = new Optimizer().plan(job);
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.layouts())
                .allSatisfy(layout -> assertThat(layout.pieces())
                        .extracting(piece -> piece.numbers())
                        .containsOnly(layout.pieces().get(0).numbers()));
    }

    @Test
    void documentsAndTablesKeepTheRule() {
        Job job = JOBS.get(Rule.Pairs.class);
        assertThat(new JobReader().read(JobWriter.write(job)).orThrow().parts()).isEqualTo(job.parts());
        String shop = JobWriter.writeShop(job);
        assertThat(new CsvJobReader()
                        .read(CsvTables.parts(job), CsvTables.stock(job), shop)
                        .orThrow()
                        .parts())
                .isEqualTo(job.parts());
    }

    @Test
    void mishapsLeaveMatesTogetherOrAlone() {
        Job job = job(1, part("leg", 6, "30", Binding.PAIRS));
        CuttingPlan plan = new Optimizer().plan(job);
        int alone = 0;
        for (long seed = 1; seed <= 15; seed++) {
            Replan replan = new Optimizer().replan(job, plan, RandomMishap.of(seed, plan));
            assertThat(PlanChecker.check(replan.job(), replan.plan()))
                    .as("seed %d", seed)
                    .isEmpty();
            alone += (int) replan.job().parts().stream()
                    .filter(part -> part.group() == null)
                    .count();
        }
        assertThat(alone).isPositive();
    }

    @Test
    void unevenPairsAreFaults() {
        assertThat(JobReview.review(job(1, part("leg", 3, "30", Binding.PAIRS))))
                .extracting(fault -> fault.code())
                .containsExactly("uneven-pairs");
        assertThat(JobReview.review(job(1, part("a", 2, "30", Binding.PAIRS), part("b", 4, "30", Binding.PAIRS))))
                .extracting(fault -> fault.pointer())
                .containsExactly("/parts/1/group");
        assertThat(JobReview.review(job(1, part("a", 2, "30", Binding.PAIRS), part("b", 2, "30", Binding.SAME_BOARD))))
                .extracting(fault -> fault.code())
                .containsExactly("conflict");
    }
}
