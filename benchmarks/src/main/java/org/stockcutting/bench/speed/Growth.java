package org.stockcutting.bench.speed;

import com.sun.management.ThreadMXBean;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;

/**
 * How time and allocated memory of a whole solve grow with one property of the job while the others stay. Each point is the median of a
 * few jobs; an exponent is the slope of the logarithms over the points that ended by themselves (proof or no more gain), those that the
 * clock ended being lower limits only.
 */
final class Growth {

    private static final int JOBS_A_POINT = 3;
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private final Optimizer optimizer = new Optimizer();
    private final int seconds;
    private final long seed;

    Growth(int seconds, long seed) {
        this.seconds = seconds;
        this.seed = seed;
    }

    /** One property that grows. */
    record Curve(String name, List<Integer> points, IntFunction<SpeedJobs.Shape> shape) {}

    static List<Curve> curves() {
        return List.of(
                new Curve("pieces", List.of(50, 100, 200, 400, 800), n -> new SpeedJobs.Shape(20, n, 0, 4)),
                new Curve("sizes", List.of(10, 20, 40, 80, 160), n -> new SpeedJobs.Shape(n, 320, 0, 4)),
                new Curve("boards", List.of(5, 10, 20, 40, 80), n -> new SpeedJobs.Shape(12, 320, n, 4)),
                new Curve("capacity", List.of(4, 8, 16, 32, 64), n -> new SpeedJobs.Shape(20, 200, 0, n)));
    }

    /**
     * One measured point.
     *
     * @param at what the property was
     * @param seconds median time of a solve
     * @param megabytes median of what a solve allocated on its thread
     * @param ended how many of the solves ended by themselves
     */
    record Point(int at, double seconds, double megabytes, int ended, int jobs) {
        boolean counts() {
            return 2 * ended > jobs;
        }
    }

    /** Slope of the logarithms and how well it fits; not a number with fewer than three points. */
    record Fit(double exponent, double rSquare, int points) {
        static Fit of(List<double[]> points) {
            SimpleRegression line = new SimpleRegression();
            points.stream()
                    .filter(p -> p[0] > 0 && p[1] > 0)
                    .forEach(p -> line.addData(Math.log(p[0]), Math.log(p[1])));
            boolean enough = line.getN() >= 3;
            return new Fit(
                    enough ? line.getSlope() : Double.NaN, enough ? line.getRSquare() : Double.NaN, (int) line.getN());
        }

        String text() {
            return points < 3
                    ? "no fit (" + points + " points)"
                    : String.format(Locale.ROOT, "^%.2f (R2 %.2f, %d points)", exponent, rSquare, points);
        }
    }

    /** Measures and prints every curve. */
    void run(PrintWriter out) {
        measure(new SpeedJobs.Shape(10, 50, 5, 4), seed);
        for (Curve curve : curves()) {
            out.printf("%s%n%10s %10s %12s %8s%n", curve.name(), "at", "seconds", "allocated MB", "ended");
            List<Point> points = new ArrayList<>();
            for (int at : curve.points()) {
                Point point = point(curve, at);
                points.add(point);
                out.printf(
                        Locale.ROOT,
                        "%10d %10.3f %12.1f %6d/%d%n",
                        point.at(),
                        point.seconds(),
                        point.megabytes(),
                        point.ended(),
                        point.jobs());
                out.flush();
            }
            List<Point> counted = points.stream().filter(Point::counts).toList();
            Fit time = Fit.of(counted.stream()
                    .map(p -> new double[] {p.at(), p.seconds()})
                    .toList());
            Fit memory = Fit.of(counted.stream()
                    .map(p -> new double[] {p.at(), p.megabytes()})
                    .toList());
            out.printf("time %s, allocation %s%n%n", time.text(), memory.text());
            out.flush();
        }
    }

    private Point point(Curve curve, int at) {
        double[] seconds = new double[JOBS_A_POINT];
        double[] megabytes = new double[JOBS_A_POINT];
        int ended = 0;
        for (int n = 0; n < JOBS_A_POINT; n++) {
            Solve solve = measure(curve.shape().apply(at), seed + n);
            seconds[n] = solve.seconds();
            megabytes[n] = solve.megabytes();
            ended += solve.ended() ? 1 : 0;
        }
        Median median = new Median();
        return new Point(at, median.evaluate(seconds), median.evaluate(megabytes), ended, JOBS_A_POINT);
    }

    /** What one solve took. */
    record Solve(double seconds, double megabytes, boolean ended) {}

    Solve measure(SpeedJobs.Shape shape, long jobSeed) {
        Job job = SpeedJobs.lines(shape, jobSeed);
        long thread = Thread.currentThread().getId();
        long bytes = THREADS.getThreadAllocatedBytes(thread);
        long start = System.nanoTime();
        CuttingPlan plan =
                optimizer.plan(job, new Effort(null, seconds, seed, 1), ProgressListener.NONE, new CancelToken());
        double took = (System.nanoTime() - start) / 1e9;
        double megabytes = (THREADS.getThreadAllocatedBytes(thread) - bytes) / 1e6;
        return new Solve(took, megabytes, plan.header().reproducible());
    }
}
