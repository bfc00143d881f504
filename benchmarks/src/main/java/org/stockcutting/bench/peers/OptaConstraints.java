package org.stockcutting.bench.peers;

import static org.optaplanner.core.api.score.stream.ConstraintCollectors.count;
import static org.optaplanner.core.api.score.stream.ConstraintCollectors.sumLong;
import static org.optaplanner.core.api.score.stream.ConstraintCollectors.toList;

import java.util.Comparator;
import java.util.List;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.score.stream.Constraint;
import org.optaplanner.core.api.score.stream.ConstraintFactory;
import org.optaplanner.core.api.score.stream.ConstraintProvider;
import org.stockcutting.solve.instance.Instance;

/**
 * The cutting job as constraints: bins are not overfull, boards cost money, and at equal cost full boards are better than evenly filled
 * ones, which is what leads the search towards an empty board. Public because the engine makes it.
 */
public final class OptaConstraints implements ConstraintProvider {

    static final int HARD_LEVELS = 1;
    static final int SOFT_LEVELS = 2;
    /** Bins are measured in this many steps before they are squared. */
    private static final long STEPS = 1_000;

    @Override
    public Constraint[] defineConstraints(ConstraintFactory factory) {
        return new Constraint[] {
            rowsFit(factory), shelvesFit(factory), mayLie(factory), perBoard(factory), cost(factory), fullness(factory)
        };
    }

    private static Constraint rowsFit(ConstraintFactory factory) {
        return factory.forEach(OptaPiece.class)
                .filter(piece -> piece.binOrThrow().isLine())
                .groupBy(OptaPiece::bin, sumLong(OptaPiece::size))
                .filter((bin, size) -> size > bin.capacity())
                .penalizeLong(hard(), (bin, size) -> size - bin.capacity())
                .asConstraint("rows fit");
    }

    private static Constraint shelvesFit(ConstraintFactory factory) {
        return factory.forEach(OptaPiece.class)
                .filter(piece -> !piece.binOrThrow().isLine())
                .groupBy(OptaPiece::bin, toList())
                .penalizeLong(hard(), OptaConstraints::leftOut)
                .asConstraint("shelves fit");
    }

    private static Constraint mayLie(ConstraintFactory factory) {
        return factory.forEach(OptaPiece.class)
                .filter(piece -> piece.binOrThrow().isLine()
                        && !LineFill.takes(
                                piece.binOrThrow().instance(),
                                piece.binOrThrow().stock(),
                                piece.item()))
                .penalizeLong(hard(), OptaPiece::size)
                .asConstraint("pieces may lie there");
    }

    private static Constraint perBoard(ConstraintFactory factory) {
        return factory.forEach(OptaPiece.class)
                .groupBy(piece -> piece.binOrThrow().board(), OptaPiece::item, OptaPiece::perBoard, count())
                .filter((board, item, most, pieces) -> pieces > most)
                .penalizeLong(hard(), (board, item, most, pieces) -> pieces - most)
                .asConstraint("copies on one board");
    }

    private static Constraint cost(ConstraintFactory factory) {
        return factory.forEach(OptaPiece.class)
                .groupBy(
                        piece -> piece.binOrThrow().board(),
                        piece -> piece.binOrThrow().cost())
                .penalizeLong(soft(0), (board, cost) -> cost)
                .asConstraint("cost");
    }

    private static Constraint fullness(ConstraintFactory factory) {
        return factory.forEach(OptaPiece.class)
                .groupBy(OptaPiece::bin, sumLong(OptaPiece::size))
                .rewardLong(soft(1), (bin, size) -> {
                    long whole = bin.isLine() ? bin.capacity() : sheet(bin);
                    long share = STEPS * Math.min(size, whole) / Math.max(1, whole);
                    return share * share;
                })
                .asConstraint("fullness");
    }

    private static long sheet(OptaBin bin) {
        var stock = bin.instance().stocks().get(bin.stock());
        return stock.length() * stock.width();
    }

    /** Area of the pieces for which shelves on this one sheet have no room, largest placed first. */
    private static long leftOut(OptaBin bin, List<OptaPiece> pieces) {
        Instance instance = bin.instance();
        Fill sheet = new ShelfFill(instance, bin.stock(), Fill.Choice.BEST);
        long out = 0;
        for (OptaPiece piece : pieces.stream().sorted(hardestFirst()).toList()) {
            if (sheet.slack(piece.item()) >= 0) {
                sheet.add(piece.item());
            } else {
                out += piece.size();
            }
        }
        return out;
    }

    static Comparator<OptaPiece> hardestFirst() {
        return new OptaPiece.Harder().reversed();
    }

    private static BendableLongScore hard() {
        return BendableLongScore.ofHard(HARD_LEVELS, SOFT_LEVELS, 0, 1);
    }

    private static BendableLongScore soft(int level) {
        return BendableLongScore.ofSoft(HARD_LEVELS, SOFT_LEVELS, level, 1);
    }
}
