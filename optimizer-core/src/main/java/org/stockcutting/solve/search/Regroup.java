package org.stockcutting.solve.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.move.AbstractMove;

/** A few pieces of one board change places with a few, or none, of another. */
final class Regroup extends AbstractMove<BoardPlan> {

    private static final int MOST = 3;

    private final List<Piece> here;
    private final List<Piece> there;
    private final Board from;
    private final Board to;

    /**
     * @param here pieces that lie on {@code from}
     * @param there pieces that lie on {@code to}
     */
    Regroup(List<Piece> here, List<Piece> there, Board from, Board to) {
        this.here = here;
        this.there = there;
        this.from = from;
        this.to = to;
    }

    /** One to three pieces of a random board against none to three of another; never one piece alone, which other moves do. */
    static Regroup random(BoardPlan plan, Random random) {
        List<Piece> pieces = plan.pieces();
        Piece first = pieces.get(random.nextInt(pieces.size()));
        Board from = first.board();
        List<Piece> here = some(pieces, from, 1 + random.nextInt(MOST), random);
        Board to = plan.boards().get(random.nextInt(plan.boards().size()));
        int back = here.size() == 1 ? 1 + random.nextInt(MOST) : random.nextInt(MOST + 1);
        List<Piece> there = to == from ? List.of() : some(pieces, to, back, random);
        return new Regroup(here, there, from, to);
    }

    /** Up to so many pieces of a board, found by walking round the list from a random place. */
    private static List<Piece> some(List<Piece> pieces, Board board, int most, Random random) {
        List<Piece> some = new ArrayList<>(most);
        int start = random.nextInt(pieces.size());
        for (int k = 0; k < pieces.size() && some.size() < most; k++) {
            Piece piece = pieces.get((start + k) % pieces.size());
            if (piece.board() == board) {
                some.add(piece);
            }
        }
        return some;
    }

    @Override
    public boolean isMoveDoable(ScoreDirector<BoardPlan> director) {
        return from != to;
    }

    @Override
    protected AbstractMove<BoardPlan> createUndoMove(ScoreDirector<BoardPlan> director) {
        return new Regroup(here, there, to, from);
    }

    @Override
    protected void doMoveOnGenuineVariables(ScoreDirector<BoardPlan> director) {
        here.forEach(piece -> put(director, piece, to));
        there.forEach(piece -> put(director, piece, from));
    }

    private static void put(ScoreDirector<BoardPlan> director, Piece piece, Board board) {
        director.beforeVariableChanged(piece, "board");
        piece.moveTo(board);
        director.afterVariableChanged(piece, "board");
    }

    @Override
    public String toString() {
        return here + " of " + from + " against " + there + " of " + to;
    }
}
