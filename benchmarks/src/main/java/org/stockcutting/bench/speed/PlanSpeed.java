package org.stockcutting.bench.speed;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.stockcutting.Optimizer;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Violation;

/**
 * The typical job of the samples, planned with the usual work limit, and its plan checked. Run with
 *
 * <pre>java -jar benchmarks/target/benchmarks.jar speed PlanSpeed</pre>
 */
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
public class PlanSpeed {

    /** The job and its plan. */
    @State(Scope.Benchmark)
    public static class Typical {
        Job job = JobOrder.of(SpeedJobs.typical()).sorted();
        Optimizer optimizer = new Optimizer();
        CuttingPlan plan = optimizer.plan(job);
    }

    /** From job to checked plan. */
    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 2)
    @Measurement(iterations = 5)
    public CuttingPlan plan(Typical typical) {
        return typical.optimizer.plan(typical.job);
    }

    /** The checker alone, certificate and all. */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 3, time = 1)
    @Measurement(iterations = 5, time = 1)
    public List<Violation> check(Typical typical) {
        return PlanChecker.check(typical.job, typical.plan);
    }
}
