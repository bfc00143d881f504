package org.stockcutting.report;

import java.util.List;
import org.stockcutting.job.Job;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.SequenceStep;

/** Everything in a plan that follows from its layouts. */
public final class Derivation {

    private Derivation() {}

    /**
     * Derives buying list, offcuts, yield and warnings.
     *
     * @param job the job
     * @param layouts layouts of a valid plan, in the plan's order
     * @param cutSequence the sequence over these layouts
     * @param setUps how often a stop or fence is moved in it
     * @throws IllegalArgumentException if a layout names stock or a part that the job does not have
     */
    public static Derived derive(Job job, List<Layout> layouts, List<SequenceStep> cutSequence, int setUps) {
        Lookup lookup = new Lookup(job);
        List<BuyingLine> bought = BuyingList.of(lookup, layouts);
        return new Derived(
                bought,
                KeptOffcuts.of(lookup, layouts, bought),
                cutSequence,
                setUps,
                Yields.of(lookup, layouts),
                Warnings.of(lookup, layouts));
    }
}
