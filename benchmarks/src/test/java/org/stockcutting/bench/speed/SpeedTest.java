package org.stockcutting.bench.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.runner.BenchmarkList;
import org.openjdk.jmh.runner.BenchmarkListEntry;
import org.openjdk.jmh.runner.format.OutputFormatFactory;
import org.openjdk.jmh.runner.options.VerboseMode;
import org.stockcutting.job.JobReview;

class SpeedTest {

    private static Set<BenchmarkListEntry> kernels() {
        return BenchmarkList.defaultList()
                .getAll(OutputFormatFactory.createFormatInstance(System.out, VerboseMode.SILENT), List.of());
    }

    @Test
    void theListOfKernelsLoadsWithTheirClasses() throws Exception {
        Set<BenchmarkListEntry> kernels = kernels();

        assertThat(kernels.stream().map(BenchmarkListEntry::getUsername).collect(Collectors.toSet()))
                .containsExactlyInAnyOrder(
                        "org.stockcutting.bench.speed.KernelSpeed.pricing",
                        "org.stockcutting.bench.speed.KernelSpeed.simplex",
                        "org.stockcutting.bench.speed.KernelSpeed.recreate",
                        "org.stockcutting.bench.speed.PlanSpeed.plan",
                        "org.stockcutting.bench.speed.PlanSpeed.check",
                        "org.stockcutting.bench.speed.PlanSpeed.certificate");
        for (BenchmarkListEntry kernel : kernels) {
            assertThat(Class.forName(kernel.generatedTarget()
                            .substring(0, kernel.generatedTarget().lastIndexOf('.'))))
                    .isNotNull();
        }
    }

    /** The most worth of a line is at least that of its best single size and at most the whole line at the best worth a unit. */
    @Test
    void kernelsDoTheWorkTheyAreNamedFor() {
        KernelSpeed kernels = new KernelSpeed();
        double worth = kernels.pricing(new KernelSpeed.Pricing());
        // 144 in less trims, plus a kerf, in sixteenths of an inch; worths are 1 to 1.1 a sixteenth.
        assertThat(worth).isBetween(2_200.0, 2_294.0 * 1.1);
        assertThat(kernels.recreate(new KernelSpeed.Sheets())).isPositive();

        KernelSpeed.Programme programme = new KernelSpeed.Programme();
        programme.rows = 20;
        programme.setUp();
        // Patterns hold four pieces, so a quarter of the demand is the least there can be.
        int demand = 0;
        for (int i = 0; i < 20; i++) {
            demand += 3 + i % 7;
        }
        assertThat(kernels.simplex(programme)).isBetween(demand / 4.0 - 1e-9, 10.0 * demand);
    }

    /** A certificate of sheets in sixteenths must prove what the plan says, and more than nothing. */
    @Test
    void theCertificateOfSheetsIsProvedAgain() {
        PlanSpeed.Sheets sheets = new PlanSpeed.Sheets();
        assertThat(JobReview.review(sheets.job)).isEmpty();
        assertThat(new PlanSpeed().certificate(sheets))
                .isPositive()
                .isEqualTo(sheets.plan.objective().bound());
    }

    @Test
    void theTypicalJobIsInTheJar() {
        assertThat(JobReview.review(SpeedJobs.typical())).isEmpty();
    }

    /** y = 5 x^1.7 must give back its exponent. */
    @Test
    void fitsTheExponentOfAPowerLaw() {
        Growth.Fit fit = Growth.Fit.of(List.of(
                new double[] {10, 5 * Math.pow(10, 1.7)},
                new double[] {20, 5 * Math.pow(20, 1.7)},
                new double[] {80, 5 * Math.pow(80, 1.7)}));
        assertThat(fit.exponent()).isCloseTo(1.7, within(1e-9));
        assertThat(fit.rSquare()).isCloseTo(1, within(1e-9));
        assertThat(Growth.Fit.of(List.of(new double[] {1, 1})).text()).startsWith("no fit");
    }

    @Test
    void measuresTimeAndAllocationOfASolve() {
        Growth growth = new Growth(5, 1);
        Growth.Solve solve = growth.measure(new SpeedJobs.Shape(3, 6, 0, 4), 1);
        assertThat(solve.seconds()).isBetween(0.0, 20.0);
        assertThat(solve.megabytes()).isGreaterThan(0.01);
    }

    @Test
    void jobsOfEveryCurveCanBePlanned() {
        for (Growth.Curve curve : Growth.curves()) {
            for (int at : curve.points()) {
                SpeedJobs.Shape shape = curve.shape().apply(at);
                assertThat(JobReview.review(SpeedJobs.lines(shape, 1))).isEmpty();
                assertThat(SpeedJobs.lines(shape, 1).parts().stream()
                                .mapToInt(p -> p.quantity())
                                .sum())
                        .isEqualTo(shape.pieces());
            }
        }
    }
}
