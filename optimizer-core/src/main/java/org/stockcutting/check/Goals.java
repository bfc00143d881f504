package org.stockcutting.check;

import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.KeepRule;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;

/** What boards cost and offcuts return under the job's goal, in atomic units. */
final class Goals {

    private final Facts facts;
    private final Goal goal;

    Goals(Facts facts) {
        this.facts = facts;
        this.goal = facts.job().goal();
    }

    boolean isWaste() {
        return goal == Goal.WASTE;
    }

    /** Minor units, one board, or the raw volume; what is on hand is free except where wood is counted. */
    BigInteger cost(Board board) {
        if (isWaste()) {
            return board.raw().area().multiply(BigInteger.valueOf(board.thickness()));
        }
        if (!(board.item() instanceof StockItem.ForSale stock)) {
            return BigInteger.ZERO;
        }
        if (goal == Goal.BOARDS) {
            return BigInteger.ONE;
        }
        Money price = Tariff.price(stock);
        return price == null ? BigInteger.ZERO : BigInteger.valueOf(price.minorUnits());
    }

    /** Rules under which an offcut of this board could be kept at all. */
    private List<KeepRule> keepRules(Board board) {
        if (!isWaste()) {
            return List.of();
        }
        return facts.job().shop().keepOffcuts().stream()
                .filter(rule -> rule.form() == board.item().form()
                        && rule.length().nanometres() <= board.raw().length()
                        && rule.width().nanometres() <= board.raw().width())
                .toList();
    }

    boolean returnsOffcuts(Board board) {
        return !keepRules(board).isEmpty();
    }

    /** Least length of an offcut over the whole width that is kept; {@link Long#MAX_VALUE} where none is. */
    long leastKeptLength(Board board) {
        return least(keepRules(board).stream().map(KeepRule::length).toList());
    }

    /** Least width of any offcut that is kept. */
    long leastKeptWidth(Board board) {
        return least(keepRules(board).stream().map(KeepRule::width).toList());
    }

    private static long least(List<Length> lengths) {
        return lengths.stream().mapToLong(Length::nanometres).min().orElse(Long.MAX_VALUE);
    }

    /** Most volume that one finished part can count for; what the part measures on the board where it is thickest and widest. */
    @Nullable BigInteger mostFinished(Rough rough, Component component) {
        return component.boards().stream()
                .filter(board -> Fit.anyhow(rough, board, facts.job().shop()))
                .map(board -> Facts.finished(rough.part(), board))
                .max(BigInteger::compareTo)
                .orElse(null);
    }
}
