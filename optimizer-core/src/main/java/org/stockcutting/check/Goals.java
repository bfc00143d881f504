package org.stockcutting.check;

import java.math.BigInteger;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.KeepRule;
import org.stockcutting.length.Length;
import org.stockcutting.stock.StockItem;

/** What boards cost and offcuts return under the job's goal, in atomic units. */
final class Goals {

    private final Facts facts;
    private final Goal goal;
    private final Map<String, BigFraction> costs = new HashMap<>();

    Goals(Facts facts) {
        this.facts = facts;
        this.goal = facts.job().goal();
    }

    boolean isWaste() {
        return goal == Goal.WASTE;
    }

    /**
     * Minor units, one board, or the raw volume; what is on hand is free except where wood is counted. Where packs or price breaks make
     * a board cheaper in company, the least that it can come to.
     */
    BigFraction cost(Board board) {
        if (isWaste()) {
            return new BigFraction(board.raw().area().multiply(BigInteger.valueOf(board.thickness())));
        }
        if (!(board.item() instanceof StockItem.ForSale stock)) {
            return BigFraction.ZERO;
        }
        return costs.computeIfAbsent(board.id(), id -> least(stock, board));
    }

    private BigFraction least(StockItem.ForSale stock, Board board) {
        if (goal == Goal.COST) {
            return Tariff.least(stock, mostBoards(stock, board));
        }
        long pack = stock.offer().pack();
        long most = mostBoards(stock, board);
        return most >= pack ? BigFraction.ONE : new BigFraction(BigInteger.valueOf(pack), BigInteger.valueOf(most));
    }

    /** True if what boards of this stock come to is no plain multiple. */
    boolean isStaircase(Board board) {
        return board.item() instanceof StockItem.ForSale stock
                && (goal == Goal.BOARDS
                        ? stock.offer().pack() > 1
                        : stock.offer().isStaircase());
    }

    /** No plan is worth less for cutting a board of which no wanted piece comes: each cut board holds one at least. */
    private long mostBoards(StockItem.ForSale stock, Board board) {
        long pieces = 0;
        if (stock.offer().isStaircase()) {
            for (Rough rough : facts.roughs().values()) {
                if (Fit.anyhow(rough, board, facts.job().shop())) {
                    if (rough.isStave()) {
                        return Integer.MAX_VALUE;
                    }
                    pieces += (long) facts.demand(rough.part()) * rough.perPart();
                }
            }
        }
        return Math.max(1, pieces);
    }

    /** What so many boards come to, packs and price breaks considered: minor units or pieces. */
    BigInteger paid(Board board, int boards) {
        if (!(board.item() instanceof StockItem.ForSale stock)) {
            return BigInteger.ZERO;
        }
        Tariff.Sale sale = Tariff.sale(stock, boards, goal == Goal.BOARDS);
        return goal == Goal.BOARDS ? BigInteger.valueOf(sale.pieces()) : sale.total();
    }

    /** Every amount that is paid comes together from these. */
    List<BigInteger> amounts(Board board) {
        if (!(board.item() instanceof StockItem.ForSale stock)) {
            return List.of();
        }
        return goal == Goal.BOARDS
                ? List.of(BigInteger.valueOf(stock.offer().pack()))
                : Tariff.rows(stock).stream().map(Tariff.Row::each).toList();
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
