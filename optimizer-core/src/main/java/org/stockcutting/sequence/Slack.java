package org.stockcutting.sequence;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Taper;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/**
 * How far everything behind a cut can still move before it meets the end of its offcut, the trim or a bad zone: what may be lost to a cut
 * gone wrong while the rest of the plan still holds.
 */
final class Slack {

    private final Job job;
    private final List<Zone> zones;
    private final Layout layout;
    private final Length usableX;
    private final Length usableY;
    private final Length firstX;
    private final Length firstY;

    Slack(Job job, @Nullable StockItem stock, Layout layout) {
        this.job = job;
        this.layout = layout;
        this.zones = stock == null ? List.of() : zones(job, stock, layout);
        Trim trim = trim(job, stock);
        this.firstX = trim.startOrZero();
        this.firstY = trim.edgeOrZero();
        this.usableX = layout.length().minus(trim.endOrZero());
        this.usableY = layout.width().minus(trim.farEdgeOrZero());
    }

    /** Bad zones, and what a tapered board lacks beside the pieces of this layout. */
    private static List<Zone> zones(Job job, StockItem stock, Layout layout) {
        List<Zone> zones = new ArrayList<>(job.shop().zonesOf(stock));
        List<Length> levels = new ArrayList<>();
        layout.pieces().forEach(piece -> levels.add(piece.y().plus(piece.extentY())));
        zones.addAll(Taper.steps(stock, trim(job, stock).farEdgeOrZero(), levels));
        return zones;
    }

    private static Trim trim(Job job, @Nullable StockItem stock) {
        if (stock == null) {
            return Trim.NONE;
        }
        return stock.trimIn(
                stock.form() == Form.SHEET ? job.shop().sheetTrim() : job.shop().boardTrim());
    }

    /** Slack of the pieces first to last of a node, of which the one taken before lay at the far end if {@code far}. */
    Length of(CutNode.Cuts node, Block block, int first, int last, boolean far) {
        int step = far ? -1 : 1;
        Length most = null;
        for (int i = far ? last : first; i >= first && i <= last; i += step) {
            CutNode piece = node.pieces().get(i);
            Block place = block.piece(node, i);
            if (piece == CutNode.RestLeaf.OFFCUT) {
                Length room = usable(node.cut(), place);
                Length limit = most == null ? room : most.min(room);
                return metalIn(block.pieces(node, first, last)) ? Length.ZERO : limit;
            }
            Length clear = clear(node.cut(), piece, place, far);
            if (clear != null) {
                most = most == null ? clear : most.min(clear);
            }
        }
        return Length.ZERO;
    }

    private Length usable(Direction cut, Block offcut) {
        Length low = offcut.from(cut).max(cut == Direction.CROSSCUT ? firstX : firstY);
        Length high = offcut.to(cut).min(cut == Direction.CROSSCUT ? usableX : usableY);
        return high.minus(low).max(Length.ZERO);
    }

    /** How far the parts in a piece can move before one takes in a zone that it must not have; null where nothing is in the way. */
    private @Nullable Length clear(Direction cut, CutNode piece, Block place, boolean far) {
        if (piece instanceof CutNode.PartLeaf leaf) {
            return clear(cut, leaf, place, far);
        }
        Length least = null;
        if (piece instanceof CutNode.Cuts cuts) {
            for (int i = 0; i < cuts.pieces().size(); i++) {
                Length clear = clear(cut, cuts.pieces().get(i), place.piece(cuts, i), far);
                if (clear != null) {
                    least = least == null ? clear : least.min(clear);
                }
            }
        }
        return least;
    }

    private @Nullable Length clear(Direction cut, CutNode.PartLeaf leaf, Block place, boolean far) {
        Direction other = cut == Direction.CROSSCUT ? Direction.RIP : Direction.CROSSCUT;
        Length least = null;
        for (Zone zone : zones) {
            Block bad = place(zone);
            boolean beside = bad.from(other).isLessThan(place.to(other))
                    && place.from(other).isLessThan(bad.to(other));
            Length gap =
                    far ? place.from(cut).minus(bad.to(cut)) : bad.from(cut).minus(place.to(cut));
            if (beside && !gap.isNegative() && !isTaken(zone, leaf.part())) {
                least = least == null ? gap : least.min(gap);
            }
        }
        return least;
    }

    private boolean isTaken(Zone zone, String part) {
        return job.parts().stream()
                .filter(candidate -> candidate.id().equals(part))
                .allMatch(candidate -> zone.isAcceptableFor(
                        candidate.woodClass(), candidate.selection().goodFaceOnly()));
    }

    private Block place(Zone zone) {
        Length from = zone.fromEdge();
        Length to = zone.toEdge();
        return new Block(zone.from(), from == null ? Length.ZERO : from, zone.to(), to == null ? layout.width() : to);
    }

    /** A nail in what is left may stand where a moved cut would go. */
    private boolean metalIn(Block left) {
        return zones.stream()
                .filter(Zone::metal)
                .map(this::place)
                .anyMatch(nail -> nail.fromX().isLessThan(left.toX())
                        && left.fromX().isLessThan(nail.toX())
                        && nail.fromY().isLessThan(left.toY())
                        && left.fromY().isLessThan(nail.toY()));
    }
}
