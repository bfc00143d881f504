package org.stockcutting.check;

import java.math.BigInteger;
import java.util.BitSet;
import java.util.List;

/** The least amount at or above a bound that a sum of prices can be. */
final class LeastAmount {

    private static final long MOST_AMOUNTS = 4_000_000;

    private LeastAmount() {}

    /**
     * @param bound what is proved
     * @param prices prices of what can be bought; zeros are ignored
     */
    static BigInteger of(BigInteger bound, List<BigInteger> prices) {
        List<BigInteger> positive =
                prices.stream().filter(p -> p.signum() > 0).distinct().toList();
        if (bound.signum() <= 0 || positive.isEmpty()) {
            return bound.max(BigInteger.ZERO);
        }
        BigInteger step = positive.stream().reduce(BigInteger.ZERO, BigInteger::gcd);
        BigInteger steps = bound.add(step).subtract(BigInteger.ONE).divide(step);
        List<BigInteger> units =
                positive.stream().map(p -> p.divide(step)).sorted().toList();
        BigInteger least = units.get(0);
        BigInteger most = units.get(units.size() - 1);
        // From least * most on, every multiple of the step can be formed (Sylvester, Frobenius).
        boolean everything = steps.compareTo(least.multiply(most)) >= 0;
        BigInteger limit = steps.add(least);
        if (everything || limit.compareTo(BigInteger.valueOf(MOST_AMOUNTS)) > 0) {
            return steps.multiply(step);
        }
        return BigInteger.valueOf(firstFormed(steps.intValueExact(), limit.intValueExact(), units))
                .multiply(step);
    }

    private static long firstFormed(int from, int limit, List<BigInteger> units) {
        BitSet formed = new BitSet(limit + 1);
        formed.set(0);
        for (int at = 0; at >= 0 && at < from; at = formed.nextSetBit(at + 1)) {
            for (BigInteger unit : units) {
                if (unit.bitLength() < 31 && at + unit.longValueExact() <= limit) {
                    formed.set(at + unit.intValueExact());
                }
            }
        }
        int found = formed.nextSetBit(from);
        return found < 0 ? from : found;
    }
}
