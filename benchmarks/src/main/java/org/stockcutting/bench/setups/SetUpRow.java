package org.stockcutting.bench.setups;

import java.math.BigInteger;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.stockcutting.FirstAndLast;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.sequence.CutSequencer;

/**
 * What one job saves.
 *
 * @param job its name
 * @param pieces how many are cut
 * @param value what the first plan is worth
 * @param same true if the last plan places as much at the same value or a better one, and the checker accepts both
 * @param first layouts and set-ups of the first plan
 * @param last layouts and set-ups of the last one
 * @param seconds of the clock, for both
 */
record SetUpRow(String job, int pieces, BigInteger value, boolean same, Counts first, Counts last, double seconds) {

    /**
     * Of one plan.
     *
     * @param layouts different ways to cut a board
     * @param alone stops and fences set if one layout is cut after the other
     * @param together stops and fences set in one sequence over all boards
     * @param settings different settings in it: no sequence over these layouts has fewer set-ups
     */
    record Counts(int layouts, int alone, int together, int settings) {
        static Counts of(Job job, CuttingPlan plan) {
            int alone = 0;
            for (Layout layout : plan.layouts()) {
                alone += CutSequencer.sequence(job, List.of(layout)).setUps();
            }
            int settings = (int) plan.derived().cutSequence().stream()
                    .map(SequenceStep::setUp)
                    .filter(Objects::nonNull)
                    .distinct()
                    .count();
            return new Counts(plan.layouts().size(), alone, plan.derived().setUps(), settings);
        }

        Counts plus(Counts other) {
            return new Counts(
                    layouts + other.layouts, alone + other.alone, together + other.together, settings + other.settings);
        }
    }

    static final List<String> HEADER = List.of(
            "job",
            "pieces",
            "value",
            "sameValue",
            "firstLayouts",
            "layouts",
            "firstSetUpsAlone",
            "setUpsAlone",
            "firstSetUpsTogether",
            "setUpsTogether",
            "settings",
            "seconds");

    /** Plans a job with so many steps. */
    static SetUpRow of(String name, Job job, long work, long seed) {
        long begin = System.nanoTime();
        Job sorted = JobOrder.of(job.withEffort(new Effort(work, 600, seed, 1))).sorted();
        FirstAndLast plans = FirstAndLast.of(sorted);
        CuttingPlan first = plans.firstPlan();
        CuttingPlan last = plans.lastPlan();
        int pieces = last.layouts().stream()
                .mapToInt(layout -> layout.repeat() * layout.pieces().size())
                .sum();
        boolean same = first.unplaced().equals(last.unplaced())
                && last.objective().value().compareTo(first.objective().value()) <= 0
                && plans.first().violations().isEmpty()
                && plans.last().violations().isEmpty();
        double seconds = (System.nanoTime() - begin) / 1e9;
        return new SetUpRow(
                name,
                pieces,
                first.objective().value(),
                same,
                Counts.of(sorted, first),
                Counts.of(sorted, last),
                seconds);
    }

    List<String> cells() {
        return List.of(
                job,
                String.valueOf(pieces),
                value.toString(),
                String.valueOf(same),
                String.valueOf(first.layouts()),
                String.valueOf(last.layouts()),
                String.valueOf(first.alone()),
                String.valueOf(last.alone()),
                String.valueOf(first.together()),
                String.valueOf(last.together()),
                String.valueOf(last.settings()),
                String.format(Locale.ROOT, "%.1f", seconds));
    }

    /** Share that is saved, as text. */
    static String saved(int before, int after) {
        return before == 0 ? "" : String.format(Locale.ROOT, "%+.0f %%", 100.0 * (after - before) / before);
    }
}
