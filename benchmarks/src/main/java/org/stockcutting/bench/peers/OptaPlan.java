package org.stockcutting.bench.peers;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.optaplanner.core.api.domain.solution.PlanningEntityCollectionProperty;
import org.optaplanner.core.api.domain.solution.PlanningScore;
import org.optaplanner.core.api.domain.solution.PlanningSolution;
import org.optaplanner.core.api.domain.solution.ProblemFactCollectionProperty;
import org.optaplanner.core.api.domain.valuerange.ValueRangeProvider;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;

/** All pieces in their bins: the planning solution. Public because the engine makes it. */
@PlanningSolution
public final class OptaPlan {

    @ValueRangeProvider(id = "bins")
    @ProblemFactCollectionProperty
    private List<OptaBin> bins = List.of();

    @PlanningEntityCollectionProperty
    private List<OptaPiece> pieces = List.of();

    @PlanningScore(
            bendableHardLevelsSize = OptaConstraints.HARD_LEVELS,
            bendableSoftLevelsSize = OptaConstraints.SOFT_LEVELS)
    private @Nullable BendableLongScore score;

    /** For the engine, which fills the fields of copies. */
    OptaPlan() {}

    OptaPlan(List<OptaBin> bins, List<OptaPiece> pieces) {
        this.bins = bins;
        this.pieces = pieces;
    }

    List<OptaPiece> pieces() {
        return pieces;
    }

    @Nullable BendableLongScore score() {
        return score;
    }
}
