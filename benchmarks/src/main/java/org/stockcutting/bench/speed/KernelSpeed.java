package org.stockcutting.bench.speed;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.solve.SmallJob;
import org.stockcutting.solve.columns.PricingKernel;
import org.stockcutting.solve.guillotine.RecreateKernel;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.lp.RevisedSimplex;

/**
 * The loops in which the engines spend their time. Run with
 *
 * <pre>java -jar benchmarks/target/benchmarks.jar speed KernelSpeed</pre>
 *
 * <p>and add {@code -prof gc} to see what they allocate.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class KernelSpeed {

    /** Pricing: 40 sizes, a length of 144 in on a grid of 1/16 in. */
    @State(Scope.Thread)
    public static class Pricing {
        PricingKernel kernel = new PricingKernel(small(40));

        private static Instance small(int sizes) {
            return instance(SpeedJobs.lines(new SpeedJobs.Shape(sizes, 5 * sizes, 0, 16), 1));
        }
    }

    /** Linear programme: random patterns of four pieces each. */
    @State(Scope.Thread)
    public static class Programme {
        @Param({"20", "60", "180"})
        int rows;

        List<int[]> patterns = List.of();

        @Setup(Level.Trial)
        public void setUp() {
            patterns = SpeedJobs.patterns(rows, 5 * rows, 1);
        }
    }

    /** Sheets: 20 sizes of parts. */
    @State(Scope.Thread)
    public static class Sheets {
        RecreateKernel kernel = new RecreateKernel(instance(SpeedJobs.sheets(20, 1)), 1);
    }

    /** One filling of the pricing table. */
    @Benchmark
    public double pricing(Pricing pricing) {
        return pricing.kernel.run();
    }

    /** All pivots from an empty basis to the optimum. */
    @Benchmark
    public double simplex(Programme programme) {
        int rows = programme.rows;
        boolean[] atLeast = new boolean[rows];
        double[] demand = new double[rows];
        double[] penalties = new double[rows];
        Arrays.fill(atLeast, true);
        Arrays.fill(penalties, 10);
        Arrays.setAll(demand, i -> 3 + i % 7);
        RevisedSimplex simplex = new RevisedSimplex(atLeast, demand, penalties, 1e-9, operations -> true);
        for (int[] pattern : programme.patterns) {
            int[] used = IntStream.range(0, rows).filter(i -> pattern[i] > 0).toArray();
            double[] counts = IntStream.of(used).mapToDouble(i -> pattern[i]).toArray();
            simplex.addColumn(1, used, counts);
        }
        simplex.minimise();
        return simplex.objective();
    }

    /** One move of the search on sheets. */
    @Benchmark
    public long recreate(Sheets sheets) {
        return sheets.kernel.run();
    }

    private static Instance instance(Job job) {
        return SmallJob.of(JobOrder.of(job).sorted()).get(0).instance();
    }
}
