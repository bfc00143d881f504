package org.stockcutting.solve.columns;

import java.util.BitSet;

/** The amounts that whole boards can come to: a bound may be raised to the next of them. */
final class CostGrid {

    private static final long MOST_WORK = 20_000_000;

    private final long step;
    private final BitSet reachable = new BitSet();
    private final long known;

    /**
     * @param most amounts above this need not be told apart
     */
    CostGrid(LineModel model, long most) {
        boolean gains = model.lines.stream().anyMatch(l -> l.stock.offcutValue() != 0);
        long[] coins = model.lines.stream()
                .mapToLong(l -> l.stock.cost())
                .filter(c -> c > 0)
                .sorted()
                .distinct()
                .toArray();
        long gcd = 0;
        for (long coin : coins) {
            gcd = gcd(gcd, coin);
        }
        step = gains || gcd == 0 ? 1 : gcd;
        long top = most / step + 1;
        if (gains || coins.length == 0 || top > MOST_WORK / coins.length) {
            known = -1;
            return;
        }
        known = top;
        reachable.set(0);
        for (long coin : coins) {
            int c = (int) Math.min(Integer.MAX_VALUE, coin / step);
            for (int i = c; i <= top; i++) {
                if (reachable.get(i - c)) {
                    reachable.set(i);
                }
            }
        }
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    /** Least amount at or above a floating bound, which is first lowered by what rounding may have added. */
    long raise(double bound) {
        double safe = bound - 1e-5 - 1e-8 * Math.abs(bound);
        long steps = (long) Math.ceil(safe / step);
        if (known >= 0 && steps >= 0 && steps <= known) {
            int next = reachable.nextSetBit((int) steps);
            steps = next < 0 ? known + 1 : next;
        }
        return steps * step;
    }
}
