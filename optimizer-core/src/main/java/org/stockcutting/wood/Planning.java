package org.stockcutting.wood;

import org.stockcutting.job.Effort;
import org.stockcutting.job.Job;

/** The library's planner as this room sees it; called from several threads at a time. */
@FunctionalInterface
public interface Planning {

    /** True if a checked plan places every part of the job; false if none was found with this effort. */
    boolean placesAll(Job job, Effort effort);
}
