package org.stockcutting.solve.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.optaplanner.core.api.score.stream.ConstraintStreamImplType;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.config.heuristic.selector.move.composite.UnionMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.factory.MoveIteratorFactoryConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.ChangeMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.SwapMoveSelectorConfig;
import org.optaplanner.core.config.localsearch.LocalSearchPhaseConfig;
import org.optaplanner.core.config.localsearch.decider.acceptor.LocalSearchAcceptorConfig;
import org.optaplanner.core.config.localsearch.decider.forager.LocalSearchForagerConfig;
import org.optaplanner.core.config.score.director.ScoreDirectorFactoryConfig;
import org.optaplanner.core.config.solver.EnvironmentMode;
import org.optaplanner.core.config.solver.SolverConfig;
import org.optaplanner.core.config.solver.termination.TerminationConfig;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Improves a pattern plan where patterns say nothing: sets that must come from one board, wood on hand first, one long offcut, fewer
 * different patterns. It never costs more than its start, unless the start breaks a set: then it looks for the cheapest plan that does
 * not.
 *
 * <p>Late acceptance hill climbing (Burke, Bykov, European Journal of Operational Research 258, 2017) over moves of one piece, swaps of
 * two, and exchanges of a few pieces between two boards. Same task, meter limit and seed, same answer. Safe to use from several threads; the
 * engine is built at the first task that needs it, which takes about a second, and kept.
 */
public final class SearchEngine {

    /** Beyond this the engine gets through too few moves for each piece to matter. */
    private static final int MOST_PIECES = 5_000;
    /** Moves without improvement for each pair of a piece and a board, and between which limits. */
    private static final long PATIENCE_PER_PAIR = 10;

    private static final long LEAST_PATIENCE = 3_000;
    private static final long MOST_PATIENCE = 100_000;
    private static final int LATE_ACCEPTANCE = 200;

    private @Nullable SolverFactory<BoardPlan> withSwaps;
    private @Nullable SolverFactory<BoardPlan> withoutSwaps;

    /**
     * Searches until the meter is spent or nothing better has turned up for long.
     *
     * @param task a start and what it is a plan for
     * @param meter of this task; a cancel or its clock ends the search with the best so far
     * @param seed seed of every random choice
     * @return patterns that keep every hard rule and place exactly what the start places; the start itself where nothing better, or, if it
     *     breaks a set, nothing valid was found
     */
    public List<Answer.PatternUse> improve(SearchTask task, WorkMeter meter, long seed) {
        if (meter.isExhausted() || !isSearchable(task)) {
            return task.start();
        }
        StartReader start = new StartReader(task);
        start.offerMore();
        int pieces = start.pieces().size();
        if (start.isHopeless()
                || pieces == 0
                || pieces > MOST_PIECES
                || start.boards().size() < 2) {
            return task.start();
        }
        List<Piece> shuffled = new ArrayList<>(start.pieces());
        Collections.shuffle(shuffled, new Random(seed));
        long patience = PATIENCE_PER_PAIR * pieces * start.boards().size();
        MoveBudget budget = new MoveBudget(meter, Math.max(LEAST_PATIENCE, Math.min(MOST_PATIENCE, patience)));
        BoardPlan best =
                factory(shuffled).buildSolver().solve(new BoardPlan(start.boards(), shuffled, start.frame(), budget));
        return budget.hasImproved()
                ? new Ending(task.instance(), start).patterns(best).orElse(task.start())
                : task.start();
    }

    private static boolean isSearchable(SearchTask task) {
        Instance instance = task.instance();
        boolean ripsFirst = Boolean.FALSE.equals(instance.limits().firstCut());
        return !ripsFirst && instance.isOneDimensional();
    }

    /** Where all pieces are alike no swap changes anything, and the engine would look for one for ever. */
    private synchronized SolverFactory<BoardPlan> factory(List<Piece> pieces) {
        int item = pieces.get(0).item();
        boolean alike = pieces.stream().allMatch(piece -> piece.item() == item);
        SolverFactory<BoardPlan> built = alike ? withoutSwaps : withSwaps;
        if (built == null) {
            built = SolverFactory.create(config(!alike));
            if (alike) {
                withoutSwaps = built;
            } else {
                withSwaps = built;
            }
        }
        return built;
    }

    private static SolverConfig config(boolean swaps) {
        TerminationConfig termination = new TerminationConfig();
        termination.setTerminationClass(MoveTermination.class);
        return new SolverConfig()
                .withSolutionClass(BoardPlan.class)
                .withEntityClasses(Piece.class)
                .withScoreDirectorFactory(new ScoreDirectorFactoryConfig()
                        .withConstraintProviderClass(ShopConstraints.class)
                        .withConstraintStreamImplType(ConstraintStreamImplType.BAVET))
                .withEnvironmentMode(EnvironmentMode.REPRODUCIBLE)
                .withRandomSeed(1L)
                .withTerminationConfig(termination)
                .withPhases(new LocalSearchPhaseConfig()
                        .withMoveSelectorConfig(moves(swaps))
                        .withAcceptorConfig(new LocalSearchAcceptorConfig().withLateAcceptanceSize(LATE_ACCEPTANCE))
                        .withForagerConfig(new LocalSearchForagerConfig().withAcceptedCountLimit(1)));
    }

    private static UnionMoveSelectorConfig moves(boolean swaps) {
        SwapMoveSelectorConfig swap = new SwapMoveSelectorConfig();
        swap.setFilterClass(UsefulSwap.class);
        swap.setFixedProbabilityWeight(4.0);
        ChangeMoveSelectorConfig change = new ChangeMoveSelectorConfig();
        change.setFixedProbabilityWeight(4.0);
        MoveIteratorFactoryConfig regroup = new MoveIteratorFactoryConfig();
        regroup.setMoveIteratorFactoryClass(Regrouping.class);
        regroup.setFixedProbabilityWeight(3.0);
        return swaps
                ? new UnionMoveSelectorConfig().withMoveSelectors(change, swap, regroup)
                : new UnionMoveSelectorConfig().withMoveSelectors(change, regroup);
    }
}
