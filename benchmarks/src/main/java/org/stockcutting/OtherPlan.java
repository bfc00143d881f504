package org.stockcutting;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Violation;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.solve.layout.Board;

/**
 * Makes a full plan of what another method found, so that its value is added up and checked exactly as ours is. It stands in this
 * package only to reach the assembly of plans; it belongs to the benchmarks.
 */
public final class OtherPlan {

    private OtherPlan() {}

    /**
     * The plan, and what the checker says of it.
     *
     * @param plan value, layouts, what is missing
     * @param violations empty if the plan may be believed
     */
    public record Checked(CuttingPlan plan, List<Violation> violations) {
        public Checked {
            violations = List.copyOf(violations);
        }
    }

    /**
     * Assembles and checks; like ours, a plan that the saw limits forbid gets a second chance with every rest where the method has it.
     *
     * @param job the job, lists sorted by id
     * @param solved every component of the job, with boards
     */
    public static Checked of(Job job, List<SolvedComponent> solved) {
        Checked checked = of(job, solved, SolvedComponent::boards);
        return checked.violations().isEmpty() ? checked : of(job, solved, SolvedComponent::asCut);
    }

    private static Checked of(Job job, List<SolvedComponent> solved, Function<SolvedComponent, List<Board>> which) {
        List<Board> boards = new ArrayList<>();
        solved.forEach(component -> boards.addAll(which.apply(component)));
        CuttingPlan plan = new PlanAssembler(job, BlankPlanner.plan(job), JobOrder.stock(job), new CancelToken())
                .assemble(solved, boards, false);
        return new Checked(plan, PlanChecker.check(job, plan));
    }
}
