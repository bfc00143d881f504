package org.stockcutting.solve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.material.Grain;
import org.stockcutting.material.WoodClass;
import org.stockcutting.part.Making;
import org.stockcutting.part.ShowFaces;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.stock.StockItem;

/** Merges rough pieces that any plan may exchange for one another into one item type. */
final class ItemMerger {

    /** Pieces are exchangeable when they agree in all of these. */
    private record Key(
            Length length,
            RoughSection section,
            WoodClass woodClass,
            ShowFaces showFaces,
            @Nullable Grain grain,
            BigInteger weight,
            String bond,
            List<Fit.Ways> ways) {}

    private final Job job;
    private final Fit fit;

    ItemMerger(Job job) {
        this.job = job;
        this.fit = new Fit(job.shop());
    }

    /** Members of each item type, longest and widest first; pieces that fit no stock are left out. */
    List<List<RoughPiece>> merge(Component component) {
        Map<Key, List<RoughPiece>> byKey = new LinkedHashMap<>();
        for (RoughPiece piece : component.pieces()) {
            List<Fit.Ways> ways = new ArrayList<>();
            for (StockItem stock : component.stock()) {
                ways.add(fit.ways(piece, stock));
            }
            if (ways.stream().anyMatch(Fit.Ways::any)) {
                byKey.computeIfAbsent(key(piece, ways), k -> new ArrayList<>()).add(piece);
            }
        }
        List<List<RoughPiece>> types = new ArrayList<>(byKey.values());
        types.sort(Comparator.<List<RoughPiece>, Length>comparing(
                        type -> type.get(0).length())
                .thenComparing(type -> width(type.get(0)))
                .reversed()
                .thenComparing(type -> type.get(0).part().id()));
        return types;
    }

    private static Key key(RoughPiece piece, List<Fit.Ways> ways) {
        return new Key(
                piece.length(),
                piece.section(),
                piece.part().woodClass(),
                piece.part().selection().showFaces(),
                piece.part().grain(),
                PieceWeight.of(piece),
                bond(piece),
                ways);
    }

    /** Pieces bound to their mates by a rule are never exchanged with those of another part. */
    private static String bond(RoughPiece piece) {
        boolean boundStaves =
                piece.part().making() instanceof Making.GlueUp glueUp && glueUp.from() != Making.StaveSource.ANY;
        return piece.part().group() != null || boundStaves ? piece.part().id() : "";
    }

    private static Length width(RoughPiece piece) {
        return piece.section() instanceof RoughSection.Sized sized ? sized.width() : Length.ZERO;
    }

    int demand(List<RoughPiece> members) {
        int sum = 0;
        for (RoughPiece member : members) {
            sum = Math.addExact(sum, Reduced.demand(member, job.sets()));
        }
        return sum;
    }
}
