package org.stockcutting.report;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.stockcutting.blank.FinishedVolume;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.length.Volume;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;
import org.stockcutting.pattern.PlacedPiece;
import org.stockcutting.plan.Layout;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.StockItem;

/**
 * Where the wood goes, exactly. Staves and plies count as whole finished parts once all of a part are placed; what a broken part leaves
 * over is allowance. A part that is taken thinner than its finished size makes the allowance smaller, below 0 if need be.
 */
final class Yields {

    private static final int RATIO_DECIMALS = 4;

    private final Lookup lookup;
    private final Map<String, Long> sizedPieces = new TreeMap<>();
    private BigInteger used = BigInteger.ZERO;
    private BigInteger rough = BigInteger.ZERO;
    private BigInteger parts = BigInteger.ZERO;
    private BigInteger kerf = BigInteger.ZERO;
    private BigInteger trim = BigInteger.ZERO;
    private BigInteger zones = BigInteger.ZERO;
    private BigInteger kept = BigInteger.ZERO;

    private Yields(Lookup lookup) {
        this.lookup = lookup;
    }

    static YieldFigures of(Lookup lookup, List<Layout> layouts) {
        Yields yields = new Yields(lookup);
        layouts.forEach(yields::add);
        yields.sizedPieces.forEach(yields::addFinished);
        return yields.figures();
    }

    private void add(Layout layout) {
        StockItem stock = lookup.stock(layout.stock());
        BigInteger depth = depth(layout);
        used = used.add(Rectangle.of(layout).area().multiply(depth));
        SawnAreas sawn = SawnAreas.of(layout, lookup.trim(stock));
        kerf = kerf.add(sawn.kerf().multiply(depth));
        trim = trim.add(sawn.trim().multiply(depth));
        layout.pieces().forEach(piece -> addPiece(layout, piece, depth));
        for (Layout.LeftOver rest : layout.offcuts()) {
            if (rest.keep()) {
                kept = kept.add(Rectangle.of(rest).area().multiply(depth));
            } else {
                zones = zones.add(badArea(layout, stock, rest).multiply(depth));
            }
        }
    }

    private void addPiece(Layout layout, PlacedPiece piece, BigInteger depth) {
        BigInteger area = BigInteger.valueOf(piece.length().nanometres())
                .multiply(BigInteger.valueOf(piece.width().nanometres()));
        rough = rough.add(area.multiply(depth));
        Part part = lookup.rough(piece.part()).part();
        if (part.section() instanceof Section.Nominal) {
            Volume one = Volume.of(part.length(), layout.width(), layout.thickness());
            parts = parts.add(one.times(layout.repeat()).cubicNanometres());
        } else {
            sizedPieces.merge(piece.part(), (long) layout.repeat() * part.gang(), Math::addExact);
        }
    }

    private void addFinished(String id, long pieces) {
        RoughPiece piece = lookup.rough(id);
        Section.Measured section = (Section.Measured) piece.part().coreSection();
        Volume one = FinishedVolume.of(piece.part(), section);
        BigInteger all = one.times(pieces).cubicNanometres();
        parts = parts.add(all.divide(BigInteger.valueOf(piece.perPart())));
    }

    /** Thickness times the number of equal boards: what turns an area on the layout into a volume. */
    private static BigInteger depth(Layout layout) {
        return BigInteger.valueOf(layout.thickness().nanometres()).multiply(BigInteger.valueOf(layout.repeat()));
    }

    private static BigInteger badArea(Layout layout, StockItem stock, Layout.LeftOver rest) {
        Rectangle place = Rectangle.of(rest);
        return CoveredArea.of(stock.zones().stream()
                .map(zone -> Rectangle.of(zone, layout).within(place))
                .toList());
    }

    private YieldFigures figures() {
        BigInteger waste = used.subtract(rough)
                .subtract(kerf)
                .subtract(trim)
                .subtract(zones)
                .subtract(kept);
        BigDecimal ratio = used.signum() == 0
                ? BigDecimal.ZERO.setScale(RATIO_DECIMALS)
                : new BigDecimal(parts).divide(new BigDecimal(used), RATIO_DECIMALS, RoundingMode.DOWN);
        return new YieldFigures(
                new Volume(used),
                new Volume(parts),
                new Volume(rough.subtract(parts)),
                new Volume(kerf),
                new Volume(trim),
                new Volume(zones),
                new Volume(kept),
                new Volume(waste),
                ratio);
    }
}
