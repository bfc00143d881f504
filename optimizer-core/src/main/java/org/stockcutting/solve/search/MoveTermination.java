package org.stockcutting.solve.search;

import org.optaplanner.core.impl.phase.scope.AbstractPhaseScope;
import org.optaplanner.core.impl.solver.scope.SolverScope;
import org.optaplanner.core.impl.solver.termination.AbstractTermination;

/**
 * Ends a run when the budget of its plan is spent. The engine asks after every move, so a run without one acceptable move ends too, and
 * the count of moves does not depend on the clock. Public because the engine makes it.
 */
public final class MoveTermination extends AbstractTermination<Object> {

    @Override
    public boolean isSolverTerminated(SolverScope<Object> scope) {
        Object plan = scope.getScoreDirector().getWorkingSolution();
        MoveBudget budget = ((BoardPlan) plan).budget();
        return budget != null && budget.isSpent(scope.getScoreCalculationCount(), scope.getBestScore());
    }

    @Override
    public boolean isPhaseTerminated(AbstractPhaseScope<Object> scope) {
        return isSolverTerminated(scope.getSolverScope());
    }

    /** The engine's sign for "unknown": no acceptor used here cools with time. */
    @Override
    public double calculateSolverTimeGradient(SolverScope<Object> scope) {
        return -1;
    }

    @Override
    public double calculatePhaseTimeGradient(AbstractPhaseScope<Object> scope) {
        return -1;
    }
}
