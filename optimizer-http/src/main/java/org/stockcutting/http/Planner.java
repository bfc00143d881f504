package org.stockcutting.http;

import org.stockcutting.Optimizer;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.ComparisonListener;
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

    /**
     * Compares the stock of a job; by the library, whoever plans.
     *
     * @throws org.stockcutting.JobRefusedException if the job cannot be planned as it stands
     */
    default Comparison compare(Job job, Effort effort, CancelToken cancel) {
        return new Optimizer().compare(job, effort, ComparisonListener.NONE, cancel);
    }

    /** The library itself, its settings built once. */
    static Planner of(Optimizer optimizer) {
        return new Planner() {
            @Override
            public CuttingPlan plan(Job job, Effort effort, ProgressListener listener, CancelToken cancel) {
                return optimizer.plan(job, effort, listener, cancel);
            }

            @Override
            public Comparison compare(Job job, Effort effort, CancelToken cancel) {
                return optimizer.compare(job, effort, ComparisonListener.NONE, cancel);
            }
        };
    }
}
