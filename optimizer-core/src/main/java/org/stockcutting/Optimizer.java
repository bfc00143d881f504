package org.stockcutting;

import java.util.List;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.io.JobHash;
import org.stockcutting.job.Effort;
import org.stockcutting.job.Fault;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.job.JobReview;
import org.stockcutting.mishap.LeftToDo;
import org.stockcutting.mishap.Mishap;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.Comparison;
import org.stockcutting.plan.ComparisonListener;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Enough;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Replan;
import org.stockcutting.plan.Violation;
import org.stockcutting.plan.Worklog;
import org.stockcutting.solve.Solver;
import org.stockcutting.wood.GradeMixes;
import org.stockcutting.wood.WoodRisk;
import org.stockcutting.wood.WoodSimulation;

/**
 * Plans jobs. One instance serves any number of threads at a time; it holds no state but built solver settings, so keep it.
 *
 * <p>Same job, seed and work limit give the same plan on any machine and thread count, unless the clock or a cancel cut the search
 * short, which the plan says.
 */
public final class Optimizer {

    /** Version of the engine, as plans name it. */
    public static final String VERSION = "1.0.0";

    private final Solver solver = new Solver();

    /**
     * Plans a job with the effort it asks for.
     *
     * @throws JobRefusedException if the job cannot be planned as it stands, with every fault
     */
    public CuttingPlan plan(Job job) {
        return plan(job, job.effort(), ProgressListener.NONE, new CancelToken());
    }

    /**
     * Plans a job.
     *
     * @param job what to make from what
     * @param effort how hard to search; replaces the job's own
     * @param listener hears of better plans while the search runs, each of them checked; called from searching threads
     * @param cancel stops the search early: the best plan so far is returned
     * @return a plan that the independent checker has accepted
     * @throws JobRefusedException if the job cannot be planned as it stands, with every fault
     * @throws PlanRejectedException if the checker refuses the plan: a fault of this library
     */
    public CuttingPlan plan(Job job, Effort effort, ProgressListener listener, CancelToken cancel) {
        review(job);
        return planReviewed(job, effort, listener, cancel);
    }

    private CuttingPlan planReviewed(Job job, Effort effort, ProgressListener listener, CancelToken cancel) {
        Job sorted = JobOrder.of(job.withEffort(effort)).sorted();
        CuttingPlan plan = new PlanningRun(sorted, listener, cancel).run(solver);
        CuttingPlan more;
        if (SetsFirst.isAsked(sorted)) {
            more = new SetsFirst(sorted, smaller -> run(smaller, cancel), cancel).of(plan);
        } else {
            CuttingPlan withMisses = new NearMisses(solver, sorted, plan, cancel).added();
            CuttingPlan told = RulePrices.told(solver, sorted, withMisses, cancel);
            more = SetUpTrade.best(solver, sorted, told, cancel);
        }
        CuttingPlan whole = new RandomWood(sorted, more).added();
        return whole == plan ? plan : accepted(sorted, whole);
    }

    private CuttingPlan run(Job smaller, CancelToken cancel) {
        return new PlanningRun(JobOrder.of(smaller).sorted(), ProgressListener.NONE, cancel).run(solver);
    }

    private static CuttingPlan accepted(Job job, CuttingPlan plan) {
        List<Violation> violations = PlanChecker.check(job, plan);
        if (!violations.isEmpty()) {
            throw new PlanRejectedException(violations);
        }
        return plan;
    }

    /** Whether the boards on hand are enough yet, with the effort that the job asks for in each plan. */
    public Enough enough(Job job) {
        return enough(job, job.effort(), new CancelToken());
    }

    /**
     * Whether the boards on hand are enough yet, asked after each of them in the order of the list: which parts still have no board, and
     * what is to spare. Nothing for sale is counted. Makes a plan a board.
     *
     * @param job what to make; what it has on hand in the order in which it was picked
     * @param effort how hard to search for each of the plans
     * @param cancel stops the searches early: what was found until then is told
     * @throws JobRefusedException if the job cannot be planned as it stands, or has nothing on hand, with every fault
     * @throws PlanRejectedException if the checker refuses a plan: a fault of this library
     */
    public Enough enough(Job job, Effort effort, CancelToken cancel) {
        review(job);
        if (job.onHand().isEmpty()) {
            throw new JobRefusedException(List.of(new Fault(
                    "/onHand",
                    FaultCode.NO_STOCK.word(),
                    "nothing",
                    "the boards that were picked",
                    "Nothing is on hand yet; list the boards that you have measured under onHand.")));
        }
        return EnoughYet.tell(job, some -> planReviewed(some, effort, ProgressListener.NONE, cancel));
    }

    /** Compares the stock of a job with the effort it asks for. */
    public Comparison compare(Job job) {
        return compare(job, job.effort(), ComparisonListener.NONE, new CancelToken());
    }

    /**
     * Compares what comes out with each stock entry alone, with all together, with pairs where there are few and with the subsets that
     * the job names: for each independent component and over the whole job. Also tells what each entry saves beside the others, and what
     * the shop's limits cost.
     *
     * @param job what to make from what
     * @param effort how hard to search for everything together, as for a plan; all other searches together take about 1.5 times as much
     * @param listener hears of every choice with its plan, in the order of the comparison
     * @param cancel stops the searches early: the best plans so far are compared
     * @throws JobRefusedException if the job cannot be planned as it stands, with every fault
     * @throws PlanRejectedException if the checker refuses a plan: a fault of this library
     */
    public Comparison compare(Job job, Effort effort, ComparisonListener listener, CancelToken cancel) {
        review(job);
        return new StockComparison(JobOrder.of(job.withEffort(effort)).sorted(), solver, cancel).run(listener);
    }

    private static void review(Job job) {
        List<Fault> faults = JobReview.review(job);
        if (!faults.isEmpty()) {
            throw new JobRefusedException(faults);
        }
    }

    /**
     * Plans what is left after a mishap, with the effort that the job asks for.
     *
     * @throws WorklogRefusedException if the worklog cannot be followed, with every fault
     */
    public Replan replan(Job job, CuttingPlan plan, Worklog worklog) {
        return replan(job, plan, worklog, job.effort(), new CancelToken());
    }

    /**
     * Plans what is left after a mishap: finished cuts stay, wood in hand comes first, and of plans that are worth the same the one that
     * changes fewest layouts. Never dearer than the parts that are left planned afresh from the same wood.
     *
     * @param job the job
     * @param plan the plan of it that was followed
     * @param worklog what has happened
     * @param effort how hard to search; the attempts together take up to about twice that
     * @param cancel stops the search early: the best plan so far is returned
     * @return the job that is left with its plan, which the independent checker has accepted
     * @throws JobRefusedException if the job, or what is left of it, cannot be planned as it stands
     * @throws WorklogRefusedException if plan or worklog cannot be followed, with every fault
     * @throws PlanRejectedException if the checker refuses the new plan: a fault of this library
     */
    public Replan replan(Job job, CuttingPlan plan, Worklog worklog, Effort effort, CancelToken cancel) {
        List<Fault> faults = JobReview.review(job);
        if (!faults.isEmpty()) {
            throw new JobRefusedException(faults);
        }
        followable(job, plan);
        faults = Mishap.review(job, plan, worklog);
        if (!faults.isEmpty()) {
            throw new WorklogRefusedException(faults);
        }
        LeftToDo left = Mishap.leftToDo(job.withEffort(effort), plan, worklog);
        Job rest = left.job();
        if (rest == null) {
            return Replanning.describe(left, null);
        }
        // The last wood of a grade may be used up: a plan says so better than a fault.
        List<Fault> unfit = JobReview.review(rest).stream()
                .filter(fault -> !fault.code().equals(FaultCode.UNKNOWN_GRADE.word()))
                .toList();
        if (!unfit.isEmpty()) {
            throw new JobRefusedException(unfit);
        }
        CuttingPlan answer = new Replanner(
                        JobOrder.of(rest).sorted(),
                        left.units(),
                        (some, hard) -> planReviewed(some, hard, ProgressListener.NONE, cancel),
                        cancel)
                .plan();
        Job sorted = JobOrder.of(rest).sorted();
        CuttingPlan whole = new RandomWood(sorted, answer).added();
        return Replanning.describe(left, whole == answer ? answer : accepted(sorted, whole));
    }

    /** Only a plan that belongs to the job and holds can be gone on with. */
    private static void followable(Job job, CuttingPlan plan) {
        String hash = JobHash.of(JobOrder.of(job).sorted());
        if (!plan.header().jobHash().equals(hash)) {
            throw new WorklogRefusedException(
                    List.of(
                            new Fault(
                                    "/plan",
                                    FaultCode.OTHER_PLAN.word(),
                                    plan.header().jobHash(),
                                    hash,
                                    "The plan was made for another job, or the job was changed since; give the two that belong together.")));
        }
        List<Violation> violations = PlanChecker.check(job, plan);
        if (!violations.isEmpty()) {
            Violation first = violations.get(0);
            throw new WorklogRefusedException(List.of(new Fault(
                    "/plan",
                    FaultCode.PLAN_DOES_NOT_HOLD.word(),
                    first.pointer() + " " + first.cause(),
                    "a plan that the checker accepts",
                    "The plan does not hold, so it cannot be gone on with: " + first.text() + ".")));
        }
    }

    /**
     * How many boards to take so that real wood suffices: simulates purchases of the plan's boards, with knots as the job's {@code wood}
     * expects them. An estimate; the plan, its cost and its bound stay what they are.
     *
     * @param job a job; its effort gives seed and threads
     * @param plan a plan of this job that places every part
     * @throws IllegalArgumentException if the plan leaves parts out
     */
    public WoodRisk sure(Job job, CuttingPlan plan) {
        return sure(job, plan, new CancelToken());
    }

    /**
     * How many boards to take so that real wood suffices, as {@link #sure(Job, CuttingPlan)}, given up when it is cancelled: a chance of
     * fewer purchases than asked for would depend on the clock.
     *
     * @throws java.util.concurrent.CancellationException if it was cancelled before all purchases were simulated
     */
    public WoodRisk sure(Job job, CuttingPlan plan, CancelToken cancel) {
        return new WoodSimulation(JobOrder.of(job).sorted(), this::placesAll, cancel).run(plan);
    }

    /**
     * What the job costs from each grade for sale alone and from mixes of two, each with as many boards as are wanted to be sure. An estimate
     * from the knots that are expected of each grade; makes a plan and a simulation for each of at most a dozen mixes and the grades.
     *
     * @param job a job with stock for sale of at least two grades that serve the same parts
     * @param effort how hard to search for each plan
     * @param cancel stops the searches early, and gives the simulation up
     * @throws JobRefusedException if the job cannot be planned as it stands
     * @throws java.util.concurrent.CancellationException if it was cancelled before all purchases were simulated
     */
    public GradeMixes grades(Job job, Effort effort, CancelToken cancel) {
        review(job);
        return new GradeTrials(
                        JobOrder.of(job.withEffort(effort)).sorted(),
                        some -> planReviewed(some, effort, ProgressListener.NONE, cancel),
                        (some, plan) -> sure(some, plan, cancel))
                .run();
    }

    private boolean placesAll(Job purchase, Effort effort) {
        try {
            Job sorted = JobOrder.of(purchase.withEffort(effort)).sorted();
            return new PlanningRun(sorted, ProgressListener.NONE, new CancelToken())
                    .run(solver)
                    .unplaced()
                    .isEmpty();
        } catch (PlanRejectedException e) {
            // With little work a plan may miss what was easy, and then no reason for what is missing is true: not
            // finished either way.
            return false;
        }
    }
}
