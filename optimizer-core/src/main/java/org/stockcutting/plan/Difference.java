package org.stockcutting.plan;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;

/**
 * How much better one choice is than another under the goal, with what is proved about it. All amounts are in atomic units of the goal.
 *
 * @param saves value of the one less value of the other, as found; null unless both make every part
 * @param atLeast proved: the least possible values differ by no less; at least 0, null with {@code saves}
 * @param atMost proved: the least possible values differ by no more; null with {@code saves}
 * @param needed true if only the better one makes every part
 */
public record Difference(
        @Nullable BigInteger saves,
        @Nullable BigInteger atLeast,
        @Nullable BigInteger atMost,
        boolean needed) {

    /** What the wider choice saves against the narrower one: every plan of the narrower one is a plan of the wider one too. */
    public static Difference of(Choice narrower, Choice wider) {
        if (!narrower.isComplete() || !wider.isComplete()) {
            return new Difference(null, null, null, wider.isComplete());
        }
        Objective worse = narrower.objective();
        Objective better = wider.objective();
        BigInteger saves = worse.value().subtract(better.value());
        BigInteger least = worse.bound().subtract(better.value()).max(BigInteger.ZERO);
        BigInteger most = worse.value().subtract(better.bound());
        return new Difference(saves, least, most, false);
    }
}
