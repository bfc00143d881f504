package org.stockcutting.solve.search;

import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.optaplanner.core.api.score.stream.uni.UniConstraintCollector;

/**
 * All pieces of one board, added up.
 *
 * @param total sum of (length + kerf)
 * @param fullWidth how many pieces span the board's whole usable width
 * @param sideValueTrimmed value of the kept strips beside the pieces where the far edge is trimmed
 * @param sideValueRaw the same where it is not
 * @param signature equal for equal multisets of items; two different ones agree with a chance of one in 2^64
 */
record Load(long total, int fullWidth, long sideValueTrimmed, long sideValueRaw, long signature) {

    static final Load EMPTY = new Load(0, 0, 0, 0, 0);

    /** Adds up the pieces of a group, forwards and back. */
    static final UniConstraintCollector<Piece, Tally, Load> OF_PIECES = new UniConstraintCollector<>() {
        @Override
        public Supplier<Tally> supplier() {
            return Tally::new;
        }

        @Override
        public BiFunction<Tally, Piece, Runnable> accumulator() {
            return Tally::add;
        }

        @Override
        public Function<Tally, Load> finisher() {
            return tally -> tally.load;
        }
    };

    private Load plus(Piece piece, StockFacts facts, int sign) {
        int item = piece.item();
        return new Load(
                total + sign * (piece.length() + piece.kerf()),
                fullWidth + (facts.isFullWidth(item) ? sign : 0),
                sideValueTrimmed + sign * facts.sideValueTrimmed(item),
                sideValueRaw + sign * facts.sideValueRaw(item),
                signature + sign * piece.signature());
    }

    Load plus(Piece piece, StockFacts facts) {
        return plus(piece, facts, 1);
    }

    /** The finaliser of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014): spreads small numbers over all 64 bits. */
    static long scatter(long number) {
        long z = number * 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** Changes as pieces come and go. */
    static final class Tally {
        private Load load = EMPTY;

        private Runnable add(Piece piece) {
            // The piece may have moved on by the time it is taken out again: its board is remembered.
            StockFacts facts = piece.board().facts();
            load = load.plus(piece, facts, 1);
            return () -> load = load.plus(piece, facts, -1);
        }
    }
}
