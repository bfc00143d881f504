package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/** Weak duality for one component: demand at its worth, less what limited boards could gain. */
final class ComponentBound {

    /** Worths of many boards may have no common unit of a sensible size. */
    private static final int MOST_BITS = 2_000;

    private static final BigInteger MOST_BOARDS = BigInteger.valueOf(20_000);

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
        return prove(List.of(duals), table);
    }

    /** The same, where further duals say with the first how many whole boards hold too little ({@link WholeBoards}). */
    @Nullable BigInteger prove(List<Duals> duals, boolean table) {
        List<BigFraction> needs = new ArrayList<>();
        List<List<BigFraction>> most = new ArrayList<>();
        BigInteger first = null;
        for (Duals one : duals) {
            List<BigFraction> gains = new ArrayList<>();
            for (Board board : component.boards()) {
                gains.add(gain(board, one, table));
            }
            if (most.isEmpty()) {
                first = prove(one, gains);
                if (first == null || goals.isWaste() || duals.size() == 1) {
                    return first;
                }
            }
            needs.add(one.total(component));
            List<BigFraction> worths = new ArrayList<>();
            for (int b = 0; b < gains.size(); b++) {
                worths.add(gains.get(b).add(goals.cost(component.boards().get(b))));
            }
            most.add(worths);
        }
        BigInteger whole = WholeBoards.of(goals, component.boards(), needs, most);
        return first == null || whole == null ? first : first.max(whole);
    }

    private @Nullable BigInteger prove(Duals duals, List<BigFraction> gains) {
        BigFraction sum = duals.total(component);
        List<BigInteger> prices = new ArrayList<>();
        boolean holds = true;
        for (int b = 0; b < gains.size(); b++) {
            Board board = component.boards().get(b);
            BigFraction gain = gains.get(b);
            if (gain.compareTo(BigFraction.ZERO) > 0) {
                holds &= board.copies().isPresent();
                sum = sum.subtract(gain.multiply(board.copies().orElse(0)));
            }
            prices.addAll(goals.amounts(board));
        }
        if (goals.isWaste()) {
            return holds ? Duals.ceil(sum).subtract(finished(duals)) : null;
        }
        BigInteger plain = holds ? LeastAmount.of(Duals.ceil(sum), prices) : null;
        BigInteger whole = severalPrices() ? wholeBoards(duals, gains) : null;
        return plain == null || whole == null ? (plain == null ? whole : plain) : plain.max(whole);
    }

    /** True if whole boards may come to more than worth does: in packs and with price breaks, and where some stock is worth less than it costs. */
    private boolean severalPrices() {
        return component.boards().stream().filter(Board::forSale).count() > 1
                || component.boards().stream().anyMatch(goals::isStaircase);
    }

    /** What whole boards come to at least that are worth as much as what is made. */
    private @Nullable BigInteger wholeBoards(Duals duals, List<BigFraction> gains) {
        BigFraction wanted = duals.total(component);
        List<BigFraction> worths = new ArrayList<>();
        BigInteger unit = wanted.getDenominator();
        for (int b = 0; b < gains.size(); b++) {
            Board board = component.boards().get(b);
            BigFraction worth = gains.get(b).add(goals.cost(board));
            worths.add(worth);
            unit = unit.multiply(worth.getDenominator().divide(unit.gcd(worth.getDenominator())));
            if (unit.bitLength() > MOST_BITS) {
                return null;
            }
            if (!board.forSale()) {
                wanted = wanted.subtract(worth.multiply(board.copies().orElse(0)));
            }
        }
        BigInteger open = Duals.ceil(wanted.multiply(unit));
        List<LeastPurchase.Line> lines = new ArrayList<>();
        for (int b = 0; b < worths.size() && open.signum() > 0; b++) {
            Board board = component.boards().get(b);
            BigInteger each = worths.get(b).multiply(unit).getNumerator();
            if (board.forSale() && each.signum() > 0) {
                BigInteger enough = open.add(each).subtract(BigInteger.ONE).divide(each);
                BigInteger most = enough.min(BigInteger.valueOf(board.copies().orElse(Integer.MAX_VALUE)));
                if (most.compareTo(MOST_BOARDS) > 0) {
                    return null;
                }
                LeastPurchase.Line line = line(board, each, most.intValueExact());
                if (!line.quantities().isEmpty()) {
                    lines.add(line);
                }
            }
        }
        return lines.isEmpty() ? null : LeastPurchase.of(open, lines);
    }

    /** Of quantities that come to the same the largest. */
    private LeastPurchase.Line line(Board board, BigInteger each, int most) {
        List<LeastPurchase.Quantity> quantities = new ArrayList<>();
        for (int n = 1; n <= most; n++) {
            BigInteger paid = goals.paid(board, n);
            int last = quantities.size() - 1;
            if (last >= 0 && quantities.get(last).paid().equals(paid)) {
                quantities.remove(last);
            }
            quantities.add(new LeastPurchase.Quantity(paid, each.multiply(BigInteger.valueOf(n))));
        }
        return new LeastPurchase.Line(quantities);
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
