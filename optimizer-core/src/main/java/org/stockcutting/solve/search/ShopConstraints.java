package org.stockcutting.solve.search;

import static org.optaplanner.core.api.score.stream.ConstraintCollectors.count;
import static org.optaplanner.core.api.score.stream.ConstraintCollectors.max;
import static org.optaplanner.core.api.score.stream.ConstraintCollectors.sumLong;
import static org.optaplanner.core.api.score.stream.ConstraintCollectors.toList;

import java.util.function.Function;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.score.stream.Constraint;
import org.optaplanner.core.api.score.stream.ConstraintFactory;
import org.optaplanner.core.api.score.stream.ConstraintProvider;
import org.optaplanner.core.api.score.stream.bi.BiConstraintStream;

/**
 * What the search holds to and what it prefers, one sentence each. That no stock is used more often than there are copies needs no
 * sentence: there are no more boards to choose from.
 *
 * <p>All hard rules share one level and are weighted against each other, so that a piece may for a while lie where it does not fit while
 * a set is brought together. The wishes are strictly ordered. Public because the engine makes it.
 */
public final class ShopConstraints implements ConstraintProvider {

    static final int HARD_LEVELS = 1;
    static final int SOFT_LEVELS = 6;

    static final int VALUE = 0;
    static final int BOUGHT = 1;
    static final int ON_BOUGHT = 2;
    static final int LONGEST = 3;
    static final int PATTERNS = 4;
    static final int SQUARES = 5;

    /** A misplaced piece weighs as much as an overrun of a tenth of the longest board. */
    private static final long MISPLACED = 1_000;
    /** What a piece too many on a board, or missing in a set, weighs. */
    private static final long MISCOUNTED = 100;

    @Override
    public Constraint[] defineConstraints(ConstraintFactory factory) {
        return new Constraint[] {
            piecesFitLength(factory),
            piecesMayLieThere(factory),
            copiesPerBoard(factory),
            wholeSets(factory),
            cutsOnLongEnoughPieces(factory),
            valueCap(factory),
            leastValue(factory),
            buyLittle(factory),
            useOnHand(factory),
            oneLongOffcut(factory),
            fewPatterns(factory),
            unevenOffcuts(factory)
        };
    }

    /** The pieces of a board and the kerfs between them fit in its usable length. */
    Constraint piecesFitLength(ConstraintFactory factory) {
        return loads(factory)
                .filter((board, load) -> board.facts().overrun(load) > 0)
                .penalizeLong(
                        hard(),
                        (board, load) -> board.facts().mark(board.facts().overrun(load)))
                .asConstraint("pieces fit the usable length");
    }

    /** A piece lies only on stock that its part may be cut from. */
    Constraint piecesMayLieThere(ConstraintFactory factory) {
        return factory.forEach(Piece.class)
                .filter(piece -> !piece.board().facts().takes(piece.item()))
                .penalizeLong(hard(), piece -> MISPLACED)
                .asConstraint("pieces lie on stock that may be used");
    }

    /** No board holds more pieces of an item than one board may. */
    Constraint copiesPerBoard(ConstraintFactory factory) {
        return factory.forEach(Piece.class)
                .groupBy(Piece::board, Piece::item, Piece::perBoard, count())
                .filter((board, item, perBoard, pieces) -> pieces > perBoard)
                .penalizeLong(hard(), (board, item, perBoard, pieces) -> MISCOUNTED * (pieces - perBoard))
                .asConstraint("copies on one board");
    }

    /** All pieces of a group that belong to one set come from one board. */
    Constraint wholeSets(ConstraintFactory factory) {
        return factory.forEach(Piece.class)
                .filter(piece -> piece.group() != null)
                .groupBy(Piece::board, Piece::group, SetGroup.MISFIT)
                .filter((board, group, misfit) -> misfit > 0)
                .penalizeLong(hard(), (board, group, misfit) -> MISCOUNTED * misfit)
                .asConstraint("whole sets on a board");
    }

    /** Every cut is made on a piece at least as long as the shop asks for. */
    Constraint cutsOnLongEnoughPieces(ConstraintFactory factory) {
        return factory.forEach(Piece.class)
                .filter(piece -> piece.minimumPiece() > 0)
                .groupBy(Piece::board, toList())
                .filter((board, pieces) -> !CutOrder.exists(board.facts(), pieces))
                .penalizeLong(hard(), (board, pieces) -> MISCOUNTED)
                .asConstraint("cuts are made on long pieces");
    }

    /** The plan costs no more than the one the search started from. */
    Constraint valueCap(ConstraintFactory factory) {
        return loads(factory)
                .groupBy(sumLong((Board board, Load load) -> board.facts().value(load)))
                .join(Frame.class)
                .filter((value, frame) -> value > frame.cap())
                .penalizeLong(hard(), (value, frame) -> MISCOUNTED)
                .asConstraint("cost cap");
    }

    /** The boards that hold pieces are worth as little as possible under the goal. */
    Constraint leastValue(ConstraintFactory factory) {
        return loads(factory)
                .penalizeLong(soft(VALUE), (board, load) -> board.facts().value(load))
                .asConstraint("least value");
    }

    /** As little wood as possible is bought at that value. */
    Constraint buyLittle(ConstraintFactory factory) {
        return loads(factory)
                .filter((board, load) -> !board.facts().onHand())
                .penalizeLong(soft(BOUGHT), (board, load) -> board.facts().areaMark())
                .asConstraint("buy little");
    }

    /** Pieces lie on wood that is owned rather than on wood that is bought. */
    Constraint useOnHand(ConstraintFactory factory) {
        return loads(factory)
                .filter((board, load) -> !board.facts().onHand())
                .penalizeLong(soft(ON_BOUGHT), (board, load) -> load.total())
                .asConstraint("use what is on hand");
    }

    /** The longest offcut worth keeping is as long as possible. */
    Constraint oneLongOffcut(ConstraintFactory factory) {
        return loads(factory)
                .groupBy(max((Board board, Load load) -> board.facts().keptLeftover(load)))
                .join(Frame.class)
                .filter((longest, frame) -> longest > frame.longestFixed())
                .rewardLong(soft(LONGEST), (longest, frame) -> longest - frame.longestFixed())
                .asConstraint("one long offcut");
    }

    /** As few boards as possible are cut differently from all others. */
    Constraint fewPatterns(ConstraintFactory factory) {
        return loads(factory)
                .groupBy((board, load) -> Load.scatter(board.facts().index() + 1L) ^ Load.scatter(load.signature()))
                .penalizeLong(soft(PATTERNS), pattern -> 1)
                .asConstraint("few patterns");
    }

    /** What is left over is gathered rather than spread: the squares of the leftovers are large. */
    Constraint unevenOffcuts(ConstraintFactory factory) {
        return loads(factory)
                .rewardLong(soft(SQUARES), (board, load) -> {
                    long mark = board.facts().mark(board.facts().leftover(load));
                    return mark * mark;
                })
                .asConstraint("uneven offcuts");
    }

    private static BiConstraintStream<Board, Load> loads(ConstraintFactory factory) {
        return factory.forEach(Piece.class).groupBy(BOARD_OF, Load.OF_PIECES);
    }

    /** One object, so that the engine sees that all streams above group alike and does so once. */
    private static final Function<Piece, Board> BOARD_OF = Piece::board;

    private static BendableLongScore hard() {
        return BendableLongScore.ofHard(HARD_LEVELS, SOFT_LEVELS, 0, 1);
    }

    private static BendableLongScore soft(int level) {
        return BendableLongScore.ofSoft(HARD_LEVELS, SOFT_LEVELS, level, 1);
    }
}
