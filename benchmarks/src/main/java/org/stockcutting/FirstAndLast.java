package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.solve.Budget;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.solve.Solver;

/**
 * The plan as the engines leave it, and the plan after all that is done at frozen value. It stands in this package only to reach the
 * assembly of plans; it belongs to the benchmarks.
 *
 * @param first what the engines found, before patterns and set-ups are saved
 * @param last what a user gets
 */
public record FirstAndLast(OtherPlan.Checked first, OtherPlan.Checked last) {

    /** Plans a job with the effort it carries, on one thread. */
    public static FirstAndLast of(Job anyOrder) {
        Job job = JobOrder.of(anyOrder).sorted();
        List<List<SolvedComponent>> told = new ArrayList<>();
        List<SolvedComponent> last = new Solver()
                .solve(
                        job,
                        BlankPlanner.plan(job),
                        JobOrder.stock(job),
                        Budget.of(job.effort()),
                        new CancelToken(),
                        told::add);
        List<SolvedComponent> first = new ArrayList<>();
        for (int c = 0; c < last.size(); c++) {
            first.add(before(told, c, last.get(c)));
        }
        return new FirstAndLast(OtherPlan.of(job, first), OtherPlan.of(job, last));
    }

    /** What was told last of a component before its final answer: the last thing its engine says. */
    private static SolvedComponent before(List<List<SolvedComponent>> told, int component, SolvedComponent last) {
        SolvedComponent before = last;
        for (List<SolvedComponent> all : told) {
            SolvedComponent one = all.get(component);
            before = one == last || one.boards().isEmpty() ? before : one;
        }
        return before;
    }

    /** The first plan as it was assembled. */
    public CuttingPlan firstPlan() {
        return first.plan();
    }

    /** The last plan as it was assembled. */
    public CuttingPlan lastPlan() {
        return last.plan();
    }
}
