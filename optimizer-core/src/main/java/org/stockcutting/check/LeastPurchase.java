package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The least that can be paid for boards that together are worth at least so much, packs and price breaks as they are: a knapsack to be filled, with
 * a list of quantities to choose from for each stock. Whatever the worths, no plan comes to less, since the worth of what it makes is at most that
 * of the best pattern of each board that it cuts (one surrogate of all demands: Glover, Operations Research 13, 1965).
 */
final class LeastPurchase {

    /** With more quantities to choose from, or more sums to form, nothing is said. */
    private static final int MOST_QUANTITIES = 20_000;

    private static final int MOST_SUMS = 200_000;

    private final List<Line> lines;
    /** For each line the least price of a unit of worth there and behind it. */
    private final List<Quantity> rates = new ArrayList<>();

    private @Nullable BigInteger best;
    private int formed;

    /**
     * Some boards of one stock.
     *
     * @param paid what they come to
     * @param worth what they are worth at most
     */
    record Quantity(BigInteger paid, BigInteger worth) {

        boolean isCheaperThan(Quantity other) {
            return paid.multiply(other.worth).compareTo(other.paid.multiply(worth)) < 0;
        }

        Quantity plus(Quantity other) {
            return new Quantity(paid.add(other.paid), worth.add(other.worth));
        }
    }

    /**
     * Quantities of one stock to choose from; none is always one of them.
     *
     * @param quantities both figures rising
     */
    record Line(List<Quantity> quantities) {

        /** The quantity with the least price for its worth. */
        Quantity rate() {
            Quantity least = quantities.get(0);
            for (Quantity quantity : quantities) {
                least = quantity.isCheaperThan(least) ? quantity : least;
            }
            return least;
        }
    }

    private LeastPurchase(List<Line> lines) {
        this.lines = lines;
        for (int i = lines.size() - 1; i >= 0; i--) {
            Quantity own = lines.get(i).rate();
            Quantity behind = rates.isEmpty() ? own : rates.get(0);
            rates.add(0, behind.isCheaperThan(own) ? behind : own);
        }
    }

    /**
     * @param wanted worth to reach, positive
     * @param lines what there is to buy; each with a quantity of some worth
     * @return what is paid at least; null if it takes too long to say, or if there is not that much
     */
    static @Nullable BigInteger of(BigInteger wanted, List<Line> lines) {
        long quantities = 0;
        for (Line line : lines) {
            quantities += line.quantities().size();
        }
        if (quantities > MOST_QUANTITIES) {
            return null;
        }
        // The cheapest for its worth first: what is left to choose then is dear, so few sums are worth following.
        List<Line> inOrder = new ArrayList<>(lines);
        inOrder.sort(Comparator.comparing(Line::rate, (a, b) -> a.isCheaperThan(b) ? -1 : b.isCheaperThan(a) ? 1 : 0));
        return new LeastPurchase(inOrder).least(wanted);
    }

    private @Nullable BigInteger least(BigInteger wanted) {
        List<Quantity> sums = List.of(new Quantity(BigInteger.ZERO, BigInteger.ZERO));
        for (Line line : lines) {
            for (Quantity quantity : line.quantities()) {
                if (quantity.worth().compareTo(wanted) >= 0) {
                    improve(quantity.paid());
                }
            }
        }
        for (int i = 0; i < lines.size(); i++) {
            TreeMap<BigInteger, BigInteger> next = new TreeMap<>();
            for (Quantity sum : sums) {
                follow(sum, i, wanted, next);
                formed += lines.get(i).quantities().size();
                if (formed > MOST_SUMS) {
                    return null;
                }
                for (Quantity quantity : lines.get(i).quantities()) {
                    follow(sum.plus(quantity), i, wanted, next);
                }
            }
            sums = undominated(next);
        }
        return best;
    }

    private void improve(BigInteger paid) {
        best = best == null || paid.compareTo(best) < 0 ? paid : best;
    }

    /** Keeps a sum unless all that can still be bought makes it as dear as the best. */
    private void follow(Quantity sum, int line, BigInteger wanted, Map<BigInteger, BigInteger> next) {
        BigInteger open = wanted.subtract(sum.worth());
        if (open.signum() <= 0) {
            improve(sum.paid());
            return;
        }
        if (line + 1 == lines.size()) {
            return;
        }
        Quantity rate = rates.get(line + 1);
        BigInteger more = open.multiply(rate.paid())
                .add(rate.worth())
                .subtract(BigInteger.ONE)
                .divide(rate.worth());
        if (best == null || sum.paid().add(more).compareTo(best) < 0) {
            next.merge(sum.paid(), sum.worth(), BigInteger::max);
        }
    }

    private List<Quantity> undominated(TreeMap<BigInteger, BigInteger> sums) {
        List<Quantity> kept = new ArrayList<>();
        BigInteger most = BigInteger.ONE.negate();
        for (Map.Entry<BigInteger, BigInteger> entry : sums.entrySet()) {
            if (entry.getValue().compareTo(most) > 0) {
                most = entry.getValue();
                kept.add(new Quantity(entry.getKey(), most));
            }
        }
        return kept;
    }
}
