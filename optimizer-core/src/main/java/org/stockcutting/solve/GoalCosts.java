package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Volume;
import org.stockcutting.stock.Bill;
import org.stockcutting.stock.StockItem;

/**
 * What each stock of a component costs under the goal, in whole cost units.
 *
 * @param costs one for each stock
 * @param offcutValues cost units earned by one square unit of kept offcut; all 0 but under the goal waste
 * @param unit atomic units of the goal in one cost unit
 * @param exact false if costs were rounded to fit
 */
record GoalCosts(List<Long> costs, List<Double> offcutValues, BigInteger unit, boolean exact) {

    /** Costs stay below this many bits, so that sums over 200,000 boards fit a long and single costs fit a double. */
    private static final int MOST_BITS = 44;

    /** @param pieces how many rough pieces are wanted: no more boards are cut */
    static GoalCosts of(Job job, List<StockItem> stock, Scale scale, int pieces) {
        List<BigInteger> atomic = new ArrayList<>();
        List<BigInteger> squares = new ArrayList<>();
        // What packs and price breaks come to need not be a multiple of what single boards cost.
        boolean stairs = stock.stream().anyMatch(item -> Staircase.isOne(item, job.goal()));
        BigInteger unit = stairs ? BigInteger.ONE : BigInteger.ZERO;
        for (StockItem item : stock) {
            BigInteger cost = atomicCost(job.goal(), item, pieces);
            BigInteger square = job.goal() == Goal.WASTE ? squareUnit(item, scale) : BigInteger.ZERO;
            atomic.add(cost);
            squares.add(square);
            unit = unit.gcd(cost).gcd(square);
        }
        unit = unit.max(BigInteger.ONE);
        boolean exact = true;
        BigInteger largest = atomic.stream().reduce(BigInteger.ZERO, BigInteger::max);
        while (largest.divide(unit).bitLength() > MOST_BITS) {
            unit = unit.shiftLeft(1);
            exact = false;
        }
        List<Long> costs = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (int s = 0; s < stock.size(); s++) {
            costs.add(atomic.get(s).divide(unit).longValueExact());
            values.add(squares.get(s).doubleValue() / unit.doubleValue());
        }
        return new GoalCosts(costs, values, unit, exact);
    }

    /** The least that one piece of this stock comes to under the goal, before any credit for kept offcuts. */
    private static BigInteger atomicCost(Goal goal, StockItem item, int pieces) {
        if (goal == Goal.WASTE) {
            return Volume.of(item.length(), item.width(), item.thickness()).cubicNanometres();
        }
        if (item instanceof StockItem.ForSale forSale) {
            if (Staircase.isOne(item, goal)) {
                return BigInteger.valueOf(new Staircase(forSale, goal).least(pieces));
            }
            return goal == Goal.BOARDS
                    ? BigInteger.ONE
                    : BigInteger.valueOf(Bill.price(forSale).minorUnits());
        }
        return BigInteger.ZERO;
    }

    private static BigInteger squareUnit(StockItem item, Scale scale) {
        return BigInteger.valueOf(scale.unitX())
                .multiply(BigInteger.valueOf(scale.unitY()))
                .multiply(BigInteger.valueOf(item.thickness().nanometres()));
    }
}
