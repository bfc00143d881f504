package org.stockcutting.solve.search;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.optaplanner.core.api.domain.solution.PlanningEntityCollectionProperty;
import org.optaplanner.core.api.domain.solution.PlanningScore;
import org.optaplanner.core.api.domain.solution.PlanningSolution;
import org.optaplanner.core.api.domain.solution.ProblemFactCollectionProperty;
import org.optaplanner.core.api.domain.solution.ProblemFactProperty;
import org.optaplanner.core.api.domain.valuerange.ValueRangeProvider;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;

/** All pieces on their boards: the planning solution. Mutable, so it never leaves this room. */
@PlanningSolution
final class BoardPlan {

    @ValueRangeProvider(id = "boards")
    @ProblemFactCollectionProperty
    private List<Board> boards = List.of();

    @PlanningEntityCollectionProperty
    private List<Piece> pieces = List.of();

    @ProblemFactProperty
    private Frame frame = new Frame(0, 0);

    @PlanningScore(
            bendableHardLevelsSize = ShopConstraints.HARD_LEVELS,
            bendableSoftLevelsSize = ShopConstraints.SOFT_LEVELS)
    private @Nullable BendableLongScore score;

    /** Shared by all copies of this plan within one run. */
    private @Nullable MoveBudget budget;

    /** For the engine, which fills the fields of copies. */
    BoardPlan() {}

    BoardPlan(List<Board> boards, List<Piece> pieces, Frame frame, MoveBudget budget) {
        this.boards = boards;
        this.pieces = pieces;
        this.frame = frame;
        this.budget = budget;
    }

    List<Board> boards() {
        return boards;
    }

    List<Piece> pieces() {
        return pieces;
    }

    Frame frame() {
        return frame;
    }

    @Nullable BendableLongScore score() {
        return score;
    }

    @Nullable MoveBudget budget() {
        return budget;
    }
}
