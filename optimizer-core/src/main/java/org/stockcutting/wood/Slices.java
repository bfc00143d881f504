package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.blank.RoughSection;
import org.stockcutting.job.Job;
import org.stockcutting.job.Rules;
import org.stockcutting.job.SawLimits;
import org.stockcutting.length.Length;
import org.stockcutting.part.Making;
import org.stockcutting.pattern.fit.Fit;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.stock.StockItem;

/** Turns a group's pieces into {@link Slice}s, where its rules are such that the quick look is safe. */
final class Slices {

    private final Job job;
    private final Group group;
    private final List<StockItem> kinds = new ArrayList<>();
    private boolean turns;

    private Slices(Job job, Group group) {
        this.job = job;
        this.group = group;
        kinds.addAll(group.bought());
        kinds.addAll(group.owned());
    }

    /** A quick look at this group, or none where only a planner can judge: saw limits, shop rules, metal. */
    static Optional<QuickCut> quick(Job job, Group group) {
        Slices slices = new Slices(job, group);
        return slices.isPlain() ? Optional.of(slices.make()) : Optional.empty();
    }

    private boolean isPlain() {
        return job.shop().limits().equals(SawLimits.NONE)
                && group.pieces().stream().noneMatch(this::isBound)
                && group.owned().stream()
                        .flatMap(board -> board.zones().stream())
                        .noneMatch(zone -> zone.metal());
    }

    private boolean isBound(RoughPiece piece) {
        String id = piece.part().id();
        boolean tied = piece.part().making() instanceof Making.GlueUp glueUp && glueUp.from() != Making.StaveSource.ANY;
        return tied || Rules.of(job).stream().anyMatch(rule -> rule.parts().contains(id));
    }

    private QuickCut make() {
        Fit fit = new Fit(job.shop());
        List<Slice> slices = new ArrayList<>();
        for (RoughPiece piece : group.pieces()) {
            List<Integer> perSlice = new ArrayList<>();
            for (StockItem stock : kinds) {
                Fit.Ways ways = fit.ways(piece, stock);
                turns |= ways.turned();
                perSlice.add(ways.straight() ? perSlice(piece, stock) : 0);
            }
            int demand =
                    Math.multiplyExact(job.demand(piece.part()) / piece.part().gang(), piece.perPart());
            slices.add(new Slice(piece.length().nanometres(), piece.part().woodClass(), demand, perSlice));
        }
        boolean partWidths = group.owned().stream()
                .flatMap(board -> board.zones().stream())
                .anyMatch(zone -> zone.fromEdge() != null || zone.toEdge() != null);
        return new QuickCut(slices, job.shop().kerf().crosscut().nanometres(), !turns && !partWidths);
    }

    private int perSlice(RoughPiece piece, StockItem stock) {
        if (!(piece.section() instanceof RoughSection.Sized sized)) {
            return 1;
        }
        Length rip = job.shop().kerf().rip();
        long room = UsableArea.of(stock, job.shop()).width().plus(rip).nanometres();
        return (int) (room / sized.width().plus(rip).nanometres());
    }
}
