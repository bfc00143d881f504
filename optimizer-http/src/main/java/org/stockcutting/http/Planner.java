package org.stockcutting.http;

import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.ProgressListener;

/** What the command line and the service ask for a plan: the library's one door, or something slow in a test of overload. */
@FunctionalInterface
public interface Planner {

    /**
     * Plans a job.
     *
     * @throws org.stockcutting.JobRefusedException if the job cannot be planned as it stands
     */
    CuttingPlan plan(Job job, Effort effort, ProgressListener listener, CancelToken cancel);
}
