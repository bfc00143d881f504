package org.stockcutting.plan;

import org.stockcutting.job.Job;

/** Hears of every choice of a comparison with the plan behind it, once the comparison is done; called from the comparing thread. */
@FunctionalInterface
public interface ComparisonListener {

    /** Hears nothing. */
    ComparisonListener NONE = (choice, job, plan) -> {};

    /**
     * Takes a choice.
     *
     * @param choice the choice
     * @param job the job as it is with this choice: fewer parts where it is a component's, less for sale
     * @param plan its plan, which the independent checker has accepted
     */
    void onChoice(Choice choice, Job job, CuttingPlan plan);
}
