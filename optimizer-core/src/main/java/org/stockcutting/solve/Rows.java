package org.stockcutting.solve;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.job.Job;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.Rule;
import org.stockcutting.job.Rules;
import org.stockcutting.solve.layout.Board;

/**
 * Pieces that come from the wood as neighbours, planned as one blank. Every set of a sequence becomes one piece as long (or as wide) as its
 * parts and the cuts between them; engines place that, and it is cut up again when the boards are written. So a bad zone is never inside
 * a run, and every engine, bound and saw limit sees a run as it sees any piece.
 */
final class Rows {

    private final Component component;
    private final Kerf kerf;
    private final List<Row> rows = new ArrayList<>();
    /** True if what engines find to be impossible may be possible. */
    private boolean inexact;

    private Rows(Component component, Kerf kerf) {
        this.component = component;
        this.kerf = kerf;
    }

    /** The component with its sequences joined; those that the saws could not cut up are left out. */
    static Rows of(Job job, Component component, boolean pinned) {
        List<RoughPiece> pieces = new ArrayList<>(component.pieces());
        List<Row> rows = new ArrayList<>();
        for (Rule rule : Rules.of(job)) {
            List<RoughPiece> own = pieces.stream()
                    .filter(piece -> rule.parts().contains(piece.part().id()))
                    .toList();
            if (rule instanceof Rule.Sequence && !own.isEmpty()) {
                pieces.removeAll(own);
                Row row = Row.of(job, own);
                if (row != null && row.isSawable(job, component.stock())) {
                    rows.add(row);
                    pieces.add(row.blank());
                }
            }
        }
        pieces.sort(java.util.Comparator.comparing(piece -> piece.part().id()));
        Rows all = new Rows(new Component(pieces, component.stock()), job.shop().kerf());
        all.rows.addAll(rows);
        all.inexact = pinned || !rows.isEmpty();
        return all;
    }

    /** What the engines plan. */
    Component component() {
        return component;
    }

    /** Boards with every run cut up into its pieces. */
    List<Board> expanded(List<Board> boards) {
        return rows.isEmpty()
                ? boards
                : boards.stream().map(board -> RowCutter.cut(board, this, kerf)).toList();
    }

    boolean isInexact() {
        return inexact;
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    @Nullable Row rowOf(RoughPiece blank) {
        return rows.stream().filter(row -> row.blank() == blank).findFirst().orElse(null);
    }

    /** Worths of the parts: that of a run is shared by the wood that each takes. */
    SortedMap<String, BigFraction> spread(SortedMap<String, BigFraction> duals) {
        SortedMap<String, BigFraction> spread = new TreeMap<>(duals);
        for (Row row : rows) {
            BigFraction all = spread.remove(row.blank().part().id());
            if (all != null) {
                row.members().forEach(piece -> spread.put(piece.part().id(), all.multiply(row.share(piece))));
            }
        }
        return spread;
    }
}
