package org.stockcutting.solve.guillotine;

import java.util.Arrays;

/**
 * Which boards a draft may take: no more than so much money buys, and of each stock no more than so many.
 *
 * @param cost most that all boards may cost
 * @param counts most boards of each stock
 */
record Allowance(long cost, int[] counts) {

    /** Any boards for this much. */
    static Allowance of(Model model, long cost) {
        int[] counts = new int[model.stocks];
        for (int s = 0; s < counts.length; s++) {
            counts[s] = model.isLimited(s) ? model.stock(s).copies() : Integer.MAX_VALUE;
        }
        return new Allowance(cost, counts);
    }

    /** Boards of this stock that a draft may still take, whatever they cost; {@link Integer#MAX_VALUE} for any number. */
    int left(Draft draft, int stock) {
        return counts[stock] == Integer.MAX_VALUE ? Integer.MAX_VALUE : counts[stock] - draft.used(stock);
    }

    /** The same of every stock. */
    int[] left(Draft draft) {
        int[] left = new int[counts.length];
        Arrays.setAll(left, s -> left(draft, s));
        return left;
    }

    /** True if it says how many boards there are of every stock. */
    boolean isPurchase() {
        return Arrays.stream(counts).allMatch(n -> n < Integer.MAX_VALUE);
    }

    boolean allows(Draft draft, int stock) {
        return left(draft, stock) > 0
                && draft.cost() + draft.yard.model.stock(stock).cost() <= cost;
    }

    /** True if the draft has taken more than it may. */
    boolean isExceeded(Draft draft) {
        boolean exceeded = draft.cost() > cost;
        for (int s = 0; s < counts.length; s++) {
            exceeded |= left(draft, s) < 0;
        }
        return exceeded;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Allowance that && cost == that.cost && Arrays.equals(counts, that.counts);
    }

    @Override
    public int hashCode() {
        return Long.hashCode(cost) + 31 * Arrays.hashCode(counts);
    }

    @Override
    public String toString() {
        return cost + " for " + Arrays.toString(counts);
    }
}
