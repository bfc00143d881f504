package org.stockcutting.bench.speed;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
import org.stockcutting.check.CertificateChecker;
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

    /** A job of sheets, 96 x 48 in in steps of 1/16 in, with its plan. */
    @State(Scope.Benchmark)
    public static class Sheets {
        Job job = JobOrder.of(SpeedJobs.fineSheets()).sorted();
        CuttingPlan plan = new Optimizer().plan(job);
        Map<String, Integer> placed = placed(job);

        private static Map<String, Integer> placed(Job job) {
            Map<String, Integer> placed = new TreeMap<>();
            job.parts().forEach(part -> placed.put(part.id(), part.quantity()));
            return placed;
        }
    }

    /** The bound of sheets proved again from what stands in the plan. */
    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @Warmup(iterations = 3, time = 1)
    @Measurement(iterations = 5, time = 1)
    public BigInteger certificate(Sheets sheets) {
        return CertificateChecker.bound(sheets.job, sheets.plan.certificate(), sheets.placed);
    }
}
