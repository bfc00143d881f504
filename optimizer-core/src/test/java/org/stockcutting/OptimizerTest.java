package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.generate.RandomJobs;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobReview;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Progress;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Status;
import org.stockcutting.plan.StopReason;
import org.stockcutting.plan.Unplaced;

/** What holds for every job: a checked plan comes out, the same one whatever the order of the lists and the number of threads. */
class OptimizerTest {

    private static final int JOBS = 400;

    private final Optimizer optimizer = new Optimizer();

    @Test
    void everyRandomJobGetsAPlanThatTheCheckerAccepts() {
        for (long seed = 1; seed <= JOBS; seed++) {
            Job job = RandomJobs.job(seed);
            assertThat(JobReview.review(job)).as("review of seed %d", seed).isEmpty();
            long at = seed;
            assertThatCode(() -> optimizer.plan(job)).as("seed %d", at).doesNotThrowAnyException();
        }
    }

    @Test
    void valueIsNeverBelowTheBoundAndMissingPartsAreNamed() {
        for (long seed = 1; seed <= 60; seed++) {
            Job job = RandomJobs.job(seed);
            CuttingPlan plan = optimizer.plan(job);
            assertThat(plan.objective().value())
                    .as("value against bound, seed %d", seed)
                    .isGreaterThanOrEqualTo(plan.objective().bound());
            assertThat(plan.unplaced().isEmpty())
                    .as("seed %d: %s", seed, plan.header().status())
                    .isEqualTo(plan.header().status() == Status.OPTIMAL
                            || plan.header().status() == Status.FEASIBLE);
            assertThat(PlanChecker.check(job, plan)).as("seed %d", seed).isEmpty();
        }
    }

    @Test
    void orderOfListsAndThreadsDoNotMatter() {
        for (long seed = 1; seed <= 25; seed++) {
            Job job = RandomJobs.job(seed);
            CuttingPlan plan = optimizer.plan(job);
            CuttingPlan shuffled = new Optimizer().plan(RandomJobs.shuffled(job, seed));
            Effort twoThreads =
                    new Effort(job.effort().work(), null, job.effort().seed(), 2);
            CuttingPlan spread = optimizer.plan(job, twoThreads, ProgressListener.NONE, new CancelToken());
            assertThat(shuffled).as("shuffled, seed %d", seed).isEqualTo(plan);
            assertThat(spread).as("two threads, seed %d", seed).isEqualTo(plan);
        }
    }

    @Test
    void theListenerHearsOfCheckedPlansAndACancelKeepsTheBest() {
        Job job = RandomJobs.job(3);
        List<Progress> heard = new ArrayList<>();
        CancelToken cancel = new CancelToken();
        optimizer.plan(job, job.effort(), heard::add, cancel);
        assertThat(heard).isNotEmpty();
        heard.forEach(
                progress -> assertThat(PlanChecker.check(job, progress.best())).isEmpty());

        cancel.cancel();
        CuttingPlan plan = optimizer.plan(job, job.effort(), ProgressListener.NONE, cancel);
        assertThat(PlanChecker.check(job, plan)).isEmpty();
        if (plan.header().stopReason() != StopReason.PROVED) {
            assertThat(plan.header().stopReason()).isEqualTo(StopReason.CANCELLED);
            assertThat(plan.header().reproducible()).isFalse();
        }
    }

    @Test
    void reasonsComeFromTheClosedSetWithARemedy() {
        List<Unplaced> all = new ArrayList<>();
        for (long seed = 1; seed <= 120; seed++) {
            all.addAll(optimizer.plan(RandomJobs.job(seed)).unplaced());
        }
        assertThat(all).isNotEmpty();
        assertThat(all.stream().map(Unplaced::remedy).collect(Collectors.toSet()))
                .noneMatch(String::isBlank);
    }
}
