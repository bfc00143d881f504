package org.stockcutting.check;

import java.math.BigInteger;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;

/**
 * Makes proposed duals hold: scales them until no board is worth more than it costs (Farley, Operations Research 38, 1990), then rounds
 * them down to short decimals.
 */
final class DualScaling {

    /** Digits of the whole demand's worth that are kept: as many as a long holds with room for a full board. */
    private static final int DIGITS = 15;

    private static final BigFraction LITTLE_LESS = new BigFraction(999_999, 1_000_000);

    private final ComponentBound bound;

    DualScaling(ComponentBound bound) {
        this.bound = bound;
    }

    /** Duals and what they prove. */
    record Proved(Duals duals, BigInteger bound) {}

    /** The better of scaling by stock without limit and by everything for sale; null if neither proves anything. */
    @Nullable Proved best(Duals proposed, boolean table) {
        Proved best = scaled(proposed, board -> board.copies().isEmpty(), table);
        boolean limited = bound.component().boards().stream()
                .anyMatch(board -> board.forSale() && board.copies().isPresent());
        if (limited) {
            best = better(best, scaled(proposed, Board::forSale, table));
        }
        return best;
    }

    static @Nullable Proved better(@Nullable Proved a, @Nullable Proved b) {
        if (a == null || b == null) {
            return a == null ? b : a;
        }
        return b.bound().compareTo(a.bound()) > 0 ? b : a;
    }

    private @Nullable Proved scaled(Duals proposed, Predicate<Board> scope, boolean table) {
        if (proposed.total(bound.component()).compareTo(BigFraction.ZERO) <= 0) {
            return null;
        }
        List<Board> boards = bound.component().boards().stream().filter(scope).toList();
        Duals duals = proposed.times(factor(proposed, boards, table));
        for (int attempt = 0; attempt < 3; attempt++) {
            Duals shortened = shorten(duals);
            BigInteger proved = bound.prove(shortened, table);
            if (proved != null) {
                return new Proved(shortened, proved);
            }
            duals = duals.times(LITTLE_LESS);
        }
        return null;
    }

    /** Gains are convex in the factor and known at 0 and 1, which gives a factor at which none is above 0. */
    private BigFraction factor(Duals duals, List<Board> boards, boolean table) {
        BigFraction factor = null;
        for (Board board : boards) {
            BigFraction one = bound.gain(board, duals, table);
            BigFraction zero = bound.goals().isWaste()
                    ? bound.gain(board, duals.times(BigFraction.ZERO), table)
                    : bound.goals().cost(board).negate();
            BigFraction worth = one.subtract(zero);
            if (worth.compareTo(BigFraction.ZERO) > 0) {
                BigFraction own = zero.negate().divide(worth);
                factor = factor == null || own.compareTo(factor) < 0 ? own : factor;
            }
        }
        boolean tooLarge = factor != null && bound.goals().isWaste() && factor.compareTo(BigFraction.ONE) > 0;
        return factor == null || tooLarge ? BigFraction.ONE : factor;
    }

    /** Rounded down to short decimals. */
    Duals shorten(Duals duals) {
        BigInteger total = Duals.ceil(duals.total(bound.component()));
        int digits = total.toString().length();
        BigInteger ten = BigInteger.TEN;
        BigFraction unit = digits <= DIGITS
                ? new BigFraction(BigInteger.ONE, ten.pow(DIGITS - digits))
                : new BigFraction(ten.pow(digits - DIGITS));
        SortedMap<String, BigFraction> values = new TreeMap<>();
        duals.values().forEach((part, value) -> {
            BigFraction units = value.divide(unit);
            BigFraction down = unit.multiply(units.getNumerator().divide(units.getDenominator()));
            if (down.compareTo(BigFraction.ZERO) > 0) {
                values.put(part, down);
            }
        });
        return new Duals(values, duals.demand());
    }
}
