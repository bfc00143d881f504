package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/** Weak duality for one component: demand at its worth, less what limited boards could gain. */
final class ComponentBound {

    private final Facts facts;
    private final Component component;
    private final Goals goals;
    private final StockGain gains;

    ComponentBound(Facts facts, Component component) {
        this.facts = facts;
        this.component = component;
        this.goals = new Goals(facts);
        this.gains = new StockGain(facts, goals, component);
    }

    BigFraction gain(Board board, Duals duals, boolean table) {
        return gains.gain(board, duals, table);
    }

    /** The bound, rounded up to what prices can form; null where some stock without limit is worth more than it costs. */
    @Nullable BigInteger prove(Duals duals, boolean table) {
        BigFraction sum = duals.total(component);
        List<BigInteger> prices = new ArrayList<>();
        for (Board board : component.boards()) {
            BigFraction gain = gain(board, duals, table);
            if (gain.compareTo(BigFraction.ZERO) > 0) {
                if (board.copies().isEmpty()) {
                    return null;
                }
                sum = sum.subtract(gain.multiply(board.copies().getAsInt()));
            }
            prices.addAll(goals.amounts(board));
        }
        if (goals.isWaste()) {
            return Duals.ceil(sum).subtract(finished(duals));
        }
        return LeastAmount.of(Duals.ceil(sum), prices);
    }

    /** True if some board is cut in two directions, so that the guillotine table may say more than its area. */
    boolean usesTable(Duals duals) {
        return component.boards().stream().anyMatch(board -> gains.usesTable(board, duals));
    }

    /** What so many boards cost together; null if none are known, or if leftovers count too. */
    @Nullable BigInteger reached(Map<String, Integer> boardsByStock) {
        if (boardsByStock.isEmpty() || goals.isWaste()) {
            return null;
        }
        BigInteger sum = BigInteger.ZERO;
        for (Board board : component.boards()) {
            int boards = boardsByStock.getOrDefault(board.item().id(), 0);
            sum = sum.add(goals.paid(board, boards));
        }
        return sum;
    }

    /** What holds without any duals: nothing is paid, or all wood of the parts is all that was bought. */
    BigInteger trivial(Duals duals) {
        return goals.isWaste() ? finished(duals).negate() : BigInteger.ZERO;
    }

    /** Finished volume of everything placed; spares count as the waste they come from. */
    private BigInteger finished(Duals duals) {
        BigInteger sum = BigInteger.ZERO;
        for (Rough rough : component.roughs()) {
            BigInteger most = goals.mostFinished(rough, component);
            long pieces = Math.max(0, duals.demand().getOrDefault(rough.part().id(), 0));
            if (most != null) {
                sum = sum.add(most.multiply(BigInteger.valueOf(pieces)));
            }
        }
        return sum;
    }

    Goals goals() {
        return goals;
    }

    Component component() {
        return component;
    }

    Facts facts() {
        return facts;
    }
}
