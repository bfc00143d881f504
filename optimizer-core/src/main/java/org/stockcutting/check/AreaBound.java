package org.stockcutting.check;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;

/** Fractional knapsack over areas with the cuts folded in: each piece carries one kerf each way, and so does the board. */
final class AreaBound {

    private AreaBound() {}

    /** Something that can be cut in any amount up to all of it. */
    record Filling(BigFraction value, BigFraction area) {

        BigFraction density() {
            return value.divide(area);
        }
    }

    static BigFraction best(List<Filling> fillings, BigInteger boardArea) {
        List<Filling> byDensity = new ArrayList<>(fillings);
        byDensity.removeIf(f -> f.value().compareTo(BigFraction.ZERO) <= 0);
        byDensity.sort(Comparator.comparing(Filling::density).reversed());
        BigFraction left = new BigFraction(boardArea);
        BigFraction worth = BigFraction.ZERO;
        for (Filling filling : byDensity) {
            if (filling.area().compareTo(left) >= 0) {
                return worth.add(filling.density().multiply(left));
            }
            worth = worth.add(filling.value());
            left = left.subtract(filling.area());
        }
        return worth;
    }

    /** All that is wanted of a part, each piece worth so much. */
    static Filling filling(Worth worth, BigFraction single, long crosscutKerf, long ripKerf) {
        BigFraction pieces = worth.isStave()
                ? new BigFraction(BigInteger.valueOf(worth.cap()), BigInteger.valueOf(worth.mostJointed()))
                : new BigFraction(worth.cap());
        BigFraction area = new BigFraction(worth.folded(crosscutKerf, ripKerf));
        return new Filling(single.multiply(pieces), area.multiply(pieces));
    }
}
