package org.stockcutting;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.stockcutting.blank.BlankPlanner;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.check.PlanChecker;
import org.stockcutting.job.Job;
import org.stockcutting.job.JobOrder;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.plan.CuttingPlan;
import org.stockcutting.plan.Progress;
import org.stockcutting.plan.ProgressListener;
import org.stockcutting.plan.Violation;
import org.stockcutting.solve.Budget;
import org.stockcutting.solve.SolvedComponent;
import org.stockcutting.solve.Solver;
import org.stockcutting.solve.layout.Board;
import org.stockcutting.solve.layout.Numbering;
import org.stockcutting.stock.StockItem;

/** One job on its way through the rooms. */
final class PlanningRun {

    /** Progress is told at most this often: a plan is written and checked each time. */
    private static final long QUIET_NANOS = 250_000_000L;

    private final Job job;
    private final ProgressListener listener;
    private final CancelToken cancel;
    private final List<RoughPiece> pieces;
    private final List<StockItem> stock;
    private long lastTold;

    PlanningRun(Job job, ProgressListener listener, CancelToken cancel) {
        this.job = job;
        this.listener = listener;
        this.cancel = cancel;
        this.pieces = BlankPlanner.plan(job);
        this.stock = JobOrder.stock(job);
        this.lastTold = System.nanoTime() - QUIET_NANOS;
    }

    CuttingPlan run(Solver solver) {
        List<SolvedComponent> solved = solver.solve(job, pieces, stock, Budget.of(job.effort()), cancel, this::tell);
        return checked(solved);
    }

    /** The plan of what was solved, after the independent checker has seen it. */
    CuttingPlan checked(List<SolvedComponent> solved) {
        boolean wantsSpares = pieces.stream().anyMatch(piece -> piece.part().spares() > 0);
        boolean limited = Numbering.mayForbid(job);
        CuttingPlan plan = assemble(solved, SolvedComponent::boards, wantsSpares);
        List<Violation> violations = PlanChecker.check(job, plan);
        if (!violations.isEmpty() && wantsSpares) {
            // A spare may ask for a cut that the saw limits forbid; it was never promised.
            plan = assemble(solved, SolvedComponent::boards, false);
            violations = PlanChecker.check(job, plan);
        }
        if (!violations.isEmpty() && limited) {
            // Pushed together, the pieces may ask for such a cut too; as the engine has them they do not.
            plan = assemble(solved, SolvedComponent::asCut, false);
            violations = PlanChecker.check(job, plan);
        }
        if (!violations.isEmpty() && pieces.stream().anyMatch(PlanningRun::isChosen)) {
            // The saws cannot free a piece at the place that was chosen for it: it is left out and named.
            plan = assemble(solved, PlanningRun::withoutChosen, false);
            violations = PlanChecker.check(job, plan);
        }
        if (!violations.isEmpty()) {
            throw new PlanRejectedException(violations);
        }
        return plan;
    }

    private static boolean isChosen(RoughPiece piece) {
        return piece.part().selection().place() != null;
    }

    private static List<Board> withoutChosen(SolvedComponent solved) {
        List<Board> boards = new ArrayList<>();
        for (Board board : solved.asCut()) {
            Board rest = board.without(label -> isChosen(label.piece()));
            if (rest != null) {
                boards.add(rest);
            }
        }
        return boards;
    }

    private CuttingPlan assemble(
            List<SolvedComponent> solved, Function<SolvedComponent, List<Board>> form, boolean spares) {
        List<Board> boards = new ArrayList<>();
        solved.forEach(component -> boards.addAll(form.apply(component)));
        return new PlanAssembler(job, pieces, stock, cancel).assemble(solved, boards, spares);
    }

    private void tell(List<SolvedComponent> soFar) {
        if (listener == ProgressListener.NONE || System.nanoTime() - lastTold < QUIET_NANOS) {
            return;
        }
        lastTold = System.nanoTime();
        CuttingPlan best = checked(soFar);
        BigInteger bound = best.objective().bound();
        listener.onProgress(
                new Progress("search", best.header().work(), best.objective().value(), bound, best));
    }
}
