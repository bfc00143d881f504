package org.stockcutting.report;

import java.math.BigInteger;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Trim;

/**
 * Walks a cut tree and adds up what the saw and the trims take. A slot that lies in the margin which is trimmed anyway belongs to the
 * trim; every other slot is kerf.
 */
final class SawnAreas {

    private final Layout layout;
    private final Trim trim;
    private BigInteger kerfArea = BigInteger.ZERO;
    private BigInteger trimArea = BigInteger.ZERO;

    private SawnAreas(Layout layout, Trim trim) {
        this.layout = layout;
        this.trim = trim;
    }

    static SawnAreas of(Layout layout, Trim trim) {
        SawnAreas areas = new SawnAreas(layout, trim);
        areas.walk(layout.cuts(), Rectangle.of(layout));
        return areas;
    }

    /** Square nanometres of all cuts but trims. */
    BigInteger kerf() {
        return kerfArea;
    }

    /** Square nanometres of trims with their own cuts. */
    BigInteger trim() {
        return trimArea;
    }

    private void walk(CutNode node, Rectangle place) {
        if (node instanceof CutNode.Cuts cuts) {
            boolean across = cuts.cut() == Direction.CROSSCUT;
            long from = across ? place.x0() : place.y0();
            for (int i = 0; i < cuts.slots().size(); i++) {
                CutNode.Slot slot = cuts.slots().get(i);
                walk(cuts.pieces().get(i), part(place, across, from, slot.from().nanometres()));
                saw(
                        slot,
                        across,
                        part(place, across, slot.from().nanometres(), slot.to().nanometres()));
                from = slot.to().nanometres();
            }
            long end = across ? place.x1() : place.y1();
            walk(cuts.pieces().get(cuts.slots().size()), part(place, across, from, end));
        } else if (node == CutNode.RestLeaf.TRIM) {
            trimArea = trimArea.add(place.area());
        }
    }

    private void saw(CutNode.Slot slot, boolean across, Rectangle dust) {
        if (isTrimming(slot, across)) {
            trimArea = trimArea.add(dust.area());
        } else {
            kerfArea = kerfArea.add(dust.area());
        }
    }

    private boolean isTrimming(CutNode.Slot slot, boolean across) {
        Length near = across ? trim.startOrZero() : trim.edgeOrZero();
        Length far = across ? trim.endOrZero() : trim.farEdgeOrZero();
        Length end = across ? layout.length() : layout.width();
        return !slot.to().isMoreThan(near) || !slot.from().isLessThan(end.minus(far));
    }

    private static Rectangle part(Rectangle place, boolean across, long from, long to) {
        return across
                ? new Rectangle(from, place.y0(), to, place.y1())
                : new Rectangle(place.x0(), from, place.x1(), to);
    }
}
