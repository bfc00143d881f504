package org.stockcutting.solve.search;

import java.util.Iterator;
import java.util.Random;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;

/** Deals out random {@link Regroup} moves without end. Public because the engine makes it. */
public final class Regrouping implements MoveIteratorFactory<BoardPlan, Regroup> {

    @Override
    public long getSize(ScoreDirector<BoardPlan> director) {
        BoardPlan plan = director.getWorkingSolution();
        return (long) plan.pieces().size() * plan.boards().size();
    }

    @Override
    public Iterator<Regroup> createOriginalMoveIterator(ScoreDirector<BoardPlan> director) {
        throw new IllegalStateException("regrouping moves are drawn at random; they have no order of their own");
    }

    @Override
    public Iterator<Regroup> createRandomMoveIterator(ScoreDirector<BoardPlan> director, Random random) {
        BoardPlan plan = director.getWorkingSolution();
        return new Iterator<>() {
            @Override
            public boolean hasNext() {
                return true;
            }

            @Override
            public Regroup next() {
                return Regroup.random(plan, random);
            }
        };
    }
}
