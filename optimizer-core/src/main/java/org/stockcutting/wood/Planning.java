package org.stockcutting.wood;

import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;
import org.stockcutting.plan.CuttingPlan;

/** The library's planner as this room sees it; called from several threads at a time. */
@FunctionalInterface
public interface Planning {

    /** A checked plan of the job. */
    CuttingPlan plan(Job job, Effort effort);
}
