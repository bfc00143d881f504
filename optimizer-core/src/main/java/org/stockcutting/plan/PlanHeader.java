package org.stockcutting.plan;

/**
 * Where a plan comes from.
 *
 * @param job name of the job
 * @param jobHash {@code sha-256:} and the hash of the job with every default filled in and its lists sorted by id
 * @param status how good it is
 * @param stopReason why the search ended
 * @param reproducible false if the clock or a cancel cut the search short
 * @param seed seed used
 * @param work weighted steps used
 * @param workVersion version of the weights
 * @param engine version of the engine
 */
public record PlanHeader(
        String job,
        String jobHash,
        Status status,
        StopReason stopReason,
        boolean reproducible,
        long seed,
        long work,
        int workVersion,
        String engine) {

    /** The same plan after more work: so many steps, cut short by nobody if {@code undisturbed}. */
    public PlanHeader after(long steps, boolean undisturbed) {
        return new PlanHeader(
                job, jobHash, status, stopReason, reproducible && undisturbed, seed, work + steps, workVersion, engine);
    }

    /** The same plan, judged otherwise. */
    public PlanHeader withStatus(Status other) {
        return new PlanHeader(job, jobHash, other, stopReason, reproducible, seed, work, workVersion, engine);
    }
}
