package org.stockcutting.bench.firstcuts;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import org.stockcutting.Optimizer;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;

/**
 * One job planned three times with the same limit and seed.
 *
 * @param job name of the job
 * @param free value of the plan, in minor units of money or in cubic inches of waste: the plan in which every board may be cut either way first
 * @param rip value with rips first only
 * @param crosscut value with crosscuts first only
 * @param bound certified bound of the free plan, which holds for the other two as well
 * @param complete true if all three place every part, so that the values can be compared
 */
record FirstCutRow(
        String job, BigDecimal free, BigDecimal rip, BigDecimal crosscut, BigDecimal bound, boolean complete) {

    static final List<String> HEADER = List.of("job", "free", "ripFirst", "crosscutFirst", "bound", "complete");

    /** A guard that a work limit does not meet. */
    private static final int FAR_OFF = 3_600;

    private static final BigDecimal CUBIC_INCH =
            new BigDecimal(BigInteger.valueOf(Length.inches("1").nanometres()).pow(3));

    static FirstCutRow of(String name, Job job, long work, long seed) {
        Effort effort = new Effort(work, FAR_OFF, seed, 1);
        CuttingPlan free = plan(job, SawLimits.FirstCut.ANY, effort);
        CuttingPlan rip = plan(job, SawLimits.FirstCut.RIP, effort);
        CuttingPlan crosscut = plan(job, SawLimits.FirstCut.CROSSCUT, effort);
        boolean complete =
                List.of(free, rip, crosscut).stream().allMatch(p -> p.unplaced().isEmpty());
        return new FirstCutRow(
                name,
                value(free),
                value(rip),
                value(crosscut),
                inUnits(free, free.objective().bound()),
                complete);
    }

    private static BigDecimal value(CuttingPlan plan) {
        return inUnits(plan, plan.objective().value());
    }

    /** Minor units of money as they are, volumes in cubic inches. */
    private static BigDecimal inUnits(CuttingPlan plan, BigInteger value) {
        BigDecimal exact = new BigDecimal(value);
        return plan.objective().goal() == Goal.WASTE ? exact.divide(CUBIC_INCH, 1, RoundingMode.HALF_UP) : exact;
    }

    private static CuttingPlan plan(Job job, SawLimits.FirstCut first, Effort effort) {
        SawLimits old = job.shop().limits();
        SawLimits limits = new SawLimits(
                old.ripCapacity(), old.longestRip(), old.crosscutCapacity(), old.stages(), first, old.minimumPiece());
        Job limited = job.withShop(job.shop().withLimits(limits));
        return new Optimizer().plan(limited, effort, ProgressListener.NONE, new CancelToken());
    }

    BigDecimal restricted() {
        return rip.min(crosscut);
    }

    boolean isDearer() {
        return free.compareTo(restricted()) > 0;
    }

    boolean isBetter() {
        return free.compareTo(restricted()) < 0;
    }

    List<String> cells() {
        return List.of(
                job,
                free.toPlainString(),
                rip.toPlainString(),
                crosscut.toPlainString(),
                bound.toPlainString(),
                String.valueOf(complete));
    }
}
