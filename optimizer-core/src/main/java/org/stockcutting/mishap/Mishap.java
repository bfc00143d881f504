package org.stockcutting.mishap;

import java.util.List;
import org.stockcutting.job.Fault;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Worklog;

/** Makes of a job, its plan and a worklog the job that is left. */
public final class Mishap {

    private Mishap() {}

    /** Every fault of the worklog, with pointers into its document; empty if it can be followed. */
    public static List<Fault> review(Job job, CuttingPlan plan, Worklog worklog) {
        return WorklogReview.review(job, plan, worklog, Progress.of(job, plan, worklog));
    }

    /**
     * What is left to do.
     *
     * @param job the job
     * @param plan a valid plan of it
     * @param worklog a worklog without faults
     */
    public static LeftToDo leftToDo(Job job, CuttingPlan plan, Worklog worklog) {
        Progress progress = Progress.of(job, plan, worklog);
        progress.find(worklog);
        return new Remainder(job, worklog, progress).leftToDo();
    }
}
