package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.generate.RandomJobs;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;
import org.stockcutting.part.Part;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.SequenceStep;
import org.stockcutting.plan.Unplaced;
import org.stockcutting.plan.Worklog;
import org.stockcutting.solve.PieceWeight;
import org.stockcutting.stock.StockItem;

/** Random mishaps: what is finished stays, the checker accepts what is left, and it is never dearer than planning it afresh. */
class MishapTest {

    private static final int MISHAPS = 500;
    /** So many mishaps happen to one job. */
    private static final int EACH = 4;

    private static final Effort SMALL = new Effort(10_000L, null, 1, 1);

    private final Optimizer optimizer = new Optimizer();

    @Test
    void afterAnyMishapTheRestIsPlannedAndNeverDearerThanAfresh() {
        int planned = 0;
        int compared = 0;
        int kept = 0;
        int changed = 0;
        Job job = RandomJobs.job(1).withEffort(SMALL);
        CuttingPlan plan = optimizer.plan(job);
        for (long seed = 1; seed <= MISHAPS; seed++) {
            if (seed % EACH == 1) {
                job = RandomJobs.job(seed).withEffort(SMALL);
                plan = optimizer.plan(job);
            }
            Worklog worklog = RandomMishap.of(seed, plan);
            Replan replan;
            try {
                replan = optimizer.replan(job, plan, worklog);
            } catch (JobRefusedException e) {
                assertThat(e.faults())
                        .as("seed %d", seed)
                        .allMatch(fault -> fault.code().equals("no-stock"));
                continue;
            } catch (RuntimeException e) {
                throw new AssertionError("seed " + seed + ": " + e.getMessage(), e);
            }
            finishedCutsAreKept(seed, job, plan, worklog, replan);
            if (replan.job() == null || replan.plan() == null) {
                continue;
            }
            planned++;
            kept += replan.kept().size();
            changed += replan.changed().size();
            everyPieceIsAccountedForOnce(seed, job, replan);
            woodIsNotInvented(seed, plan, replan);
            assertThat(JobReview.review(replan.job())).as("seed %d", seed).isEmpty();
            assertThat(PlanChecker.check(replan.job(), replan.plan()))
                    .as("seed %d", seed)
                    .isEmpty();
            if (costsNothing(replan.job(), replan.plan())) {
                continue;
            }
            compared++;
            neverWorse(seed, replan.job(), replan.plan());
        }
        System.out.println(planned + " mishaps planned, " + compared + " compared with planning afresh, " + kept
                + " pieces of wood kept as planned, " + changed + " changed");
        assertThat(planned).isGreaterThan(MISHAPS / 2);
        assertThat(kept).isGreaterThan(changed);
    }

    /** Where money or boards count, nothing can be cheaper than nothing bought and nothing left out. */
    private static boolean costsNothing(Job job, CuttingPlan plan) {
        return job.goal() != Goal.WASTE
                && plan.unplaced().isEmpty()
                && plan.objective().value().signum() == 0;
    }

    /** More finished volume placed than afresh, or as much and not dearer. */
    private void neverWorse(long seed, Job job, CuttingPlan plan) {
        CuttingPlan afresh = optimizer.plan(job);
        BigInteger missing = missing(job, plan);
        assertThat(missing).as("left out, seed %d", seed).isLessThanOrEqualTo(missing(job, afresh));
        if (missing.equals(missing(job, afresh))) {
            assertThat(plan.objective().value())
                    .as("value, seed %d", seed)
                    .isLessThanOrEqualTo(afresh.objective().value());
        }
    }

    /** Job 252 once had a reason that was not so, job 424 left more out than afresh though less of one part: harder search than above. */
    @ParameterizedTest
    @ValueSource(longs = {252, 424})
    void jobsThatWentWrongOnce(long seed) {
        Job job = RandomJobs.job(seed).withEffort(new Effort(20_000L, null, 1, 1));
        CuttingPlan plan = optimizer.plan(job);
        Replan replan = optimizer.replan(job, plan, RandomMishap.of(seed, plan));
        Job left = Objects.requireNonNull(replan.job());
        CuttingPlan answer = Objects.requireNonNull(replan.plan());
        assertThat(PlanChecker.check(left, answer)).isEmpty();
        neverWorse(seed, left, answer);
    }

    private static BigInteger missing(Job job, CuttingPlan plan) {
        BigInteger volume = BigInteger.ZERO;
        for (Unplaced line : plan.unplaced()) {
            for (Part part : job.parts()) {
                if (part.id().equals(line.part())) {
                    volume = volume.add(
                            PieceWeight.finished(part).cubicNanometres().multiply(BigInteger.valueOf(line.quantity())));
                }
            }
        }
        return volume;
    }

    /** A done step names the part it frees: that part is not wanted again unless it was spoiled. */
    private static void finishedCutsAreKept(long seed, Job job, CuttingPlan plan, Worklog worklog, Replan replan) {
        Set<Integer> done = new HashSet<>(worklog.done());
        Set<String> spoiled = new HashSet<>();
        worklog.spoiled().forEach(piece -> spoiled.add(piece.part() + " " + piece.number()));
        Set<String> staved = new HashSet<>();
        plan.layouts()
                .forEach(layout -> layout.pieces().stream()
                        .filter(piece -> !piece.members().isEmpty())
                        .forEach(piece -> staved.add(piece.part())));
        Map<String, Integer> demand = new TreeMap<>();
        job.parts().forEach(part -> demand.put(part.id(), job.demand(part)));
        Set<String> wanted = new TreeSet<>();
        replan.lines().forEach(line -> line.numbers().forEach(number -> wanted.add(line.part() + " " + number)));
        for (SequenceStep step : plan.derived().cutSequence()) {
            SequenceStep.Piece piece = step.piece();
            if (piece == null
                    || step.cut() == null
                    || staved.contains(piece.part())
                    || piece.number() > demand.getOrDefault(piece.part(), 0)) {
                continue;
            }
            String name = piece.part() + " " + piece.number();
            if (done.contains(step.step()) && !spoiled.contains(name)) {
                assertThat(wanted).as("seed %d", seed).doesNotContain(name);
            }
        }
    }

    private static void everyPieceIsAccountedForOnce(long seed, Job job, Replan replan) {
        for (Part part : job.parts()) {
            List<Integer> numbers = new ArrayList<>();
            replan.finished().stream()
                    .filter(line -> line.part().equals(part.id()))
                    .forEach(line -> line.numbers().stream()
                            .filter(number -> number <= job.demand(part))
                            .forEach(numbers::add));
            replan.lines().stream()
                    .filter(line -> line.part().equals(part.id()))
                    .forEach(line ->
                            numbers.addAll(line.members().isEmpty() ? line.numbers() : new TreeSet<>(line.numbers())));
            assertThat(new TreeSet<>(numbers))
                    .as("%s, seed %d", part.id(), seed)
                    .hasSize(job.demand(part));
            if (replan.lines().stream()
                    .noneMatch(line ->
                            line.part().equals(part.id()) && !line.members().isEmpty())) {
                assertThat(numbers).as("%s, seed %d", part.id(), seed).doesNotHaveDuplicates();
            }
        }
    }

    /** The pieces of a board in hand are together no larger than the board was. */
    private static void woodIsNotInvented(long seed, CuttingPlan plan, Replan replan) {
        Job job = java.util.Objects.requireNonNull(replan.job());
        for (Map.Entry<String, Layout> board : RandomMishap.boards(plan).entrySet()) {
            BigInteger inHand = BigInteger.ZERO;
            for (StockItem.OnHand item : job.onHand()) {
                if (item.id().equals(board.getKey()) || item.id().startsWith(board.getKey() + "-")) {
                    inHand = inHand.add(
                            area(item.length().nanometres(), item.width().nanometres()));
                }
            }
            Layout layout = board.getValue();
            assertThat(inHand)
                    .as("%s, seed %d", board.getKey(), seed)
                    .isLessThanOrEqualTo(
                            area(layout.length().nanometres(), layout.width().nanometres()));
        }
    }

    private static BigInteger area(long length, long width) {
        return BigInteger.valueOf(length).multiply(BigInteger.valueOf(width));
    }
}
