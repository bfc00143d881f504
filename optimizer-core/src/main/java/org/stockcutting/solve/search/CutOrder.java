package org.stockcutting.solve.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * In which order the pieces of one board are cut. Longest first; where the saw must not cut short stubs and that order would end on one,
 * shortest first, which leaves the longest piece for the last cut.
 */
final class CutOrder {

    private static final Comparator<Piece> LONGEST_FIRST =
            Comparator.comparingLong(Piece::length).reversed().thenComparingInt(Piece::item);

    private CutOrder() {}

    static boolean exists(StockFacts facts, List<Piece> pieces) {
        return of(facts, pieces).isPresent();
    }

    static Optional<List<Piece>> of(StockFacts facts, List<Piece> pieces) {
        List<Piece> order = new ArrayList<>(pieces);
        order.sort(LONGEST_FIRST);
        if (canBeSawn(facts, order)) {
            return Optional.of(order);
        }
        Collections.reverse(order);
        return canBeSawn(facts, order) ? Optional.of(order) : Optional.empty();
    }

    private static boolean canBeSawn(StockFacts facts, List<Piece> order) {
        long usable = facts.stock().length();
        long raw = usable + facts.stock().rawEnd();
        long start = 0;
        for (Piece piece : order) {
            long end = start + piece.length();
            boolean endsAtRawEnd = end == raw;
            if (!endsAtRawEnd && raw - start < piece.minimumPiece()) {
                return false;
            }
            start = end + piece.kerf();
        }
        return true;
    }
}
