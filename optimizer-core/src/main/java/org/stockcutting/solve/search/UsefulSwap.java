package org.stockcutting.solve.search;

import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.selector.common.decorator.SelectionFilter;
import org.optaplanner.core.impl.heuristic.selector.move.generic.SwapMove;

/** Leaves out swaps of two equal pieces, which change nothing. Public because the engine makes it. */
public final class UsefulSwap implements SelectionFilter<Object, SwapMove<Object>> {

    @Override
    public boolean accept(ScoreDirector<Object> director, SwapMove<Object> move) {
        return !(move.getLeftEntity() instanceof Piece left)
                || !(move.getRightEntity() instanceof Piece right)
                || left.item() != right.item();
    }
}
