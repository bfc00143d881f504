package org.stockcutting.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.Cutout;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/**
 * Offcuts worth keeping and boards that were bought but not cut, as stock on hand for the next job: {@code {stock}-a}, {@code -b} and so on, one entry for all that are truly
 * equal. Ids that the job already uses are passed over.
 */
final class KeptOffcuts {

    private static final int LETTERS = 26;

    private KeptOffcuts() {}

    static List<StockItem.OnHand> of(Lookup lookup, List<Layout> layouts, List<BuyingLine> bought) {
        Map<String, Map<StockItem.OnHand, Integer>> byStock = new TreeMap<>();
        for (Layout layout : layouts) {
            for (Layout.LeftOver rest : layout.offcuts()) {
                if (rest.keep()) {
                    StockItem.OnHand nameless = offcut(lookup, layout, rest);
                    byStock.computeIfAbsent(layout.stock(), id -> new LinkedHashMap<>())
                            .merge(nameless, layout.repeat(), Math::addExact);
                }
            }
        }
        for (BuyingLine line : bought) {
            int whole = line.quantity() - line.lot().used();
            if (whole > 0) {
                byStock.computeIfAbsent(line.stock(), id -> new LinkedHashMap<>())
                        .merge(uncut(lookup, lookup.stock(line.stock())), whole, Math::addExact);
            }
        }
        Set<String> taken = lookup.stockIds();
        List<StockItem.OnHand> kept = new ArrayList<>();
        byStock.forEach((stock, offcuts) ->
                offcuts.forEach((offcut, quantity) -> kept.add(named(offcut, freeId(stock, taken), quantity))));
        kept.sort(Comparator.comparing(StockItem.OnHand::id));
        return kept;
    }

    private static StockItem.OnHand offcut(Lookup lookup, Layout layout, Layout.LeftOver rest) {
        StockItem stock = lookup.stock(layout.stock());
        boolean fullWidth = rest.width().equals(layout.width());
        Length end = rest.x().plus(rest.length());
        Cutout wood = Cutout.of(stock, rest.x(), rest.y(), end, rest.y().plus(rest.width()));
        return new StockItem.OnHand(
                "",
                stock.form(),
                fullWidth ? stock.nominal() : null,
                rest.length(),
                wood.width(),
                layout.thickness(),
                stock.material(),
                stock.grain(),
                trim(lookup, stock, layout, rest, wood),
                1,
                zones(stock, layout, rest, wood),
                wood.condition(stock, rest.x(), rest.y(), end),
                stock.grade());
    }

    /** A board that came with its pack, or that was cheaper to take than to leave. */
    private static StockItem.OnHand uncut(Lookup lookup, StockItem stock) {
        Trim old = lookup.trim(stock);
        boolean own = stock.ownTrim() != null;
        return new StockItem.OnHand(
                "",
                stock.form(),
                stock.nominal(),
                stock.length(),
                stock.width(),
                stock.thickness(),
                stock.material(),
                stock.grain(),
                new Trim(raw(old.start(), own), raw(old.end(), own), raw(old.edge(), own), raw(old.farEdge(), own)),
                1,
                List.of());
    }

    /** What the saw made needs no trim; what is still raw needs what the stock needed there. */
    private static Trim trim(Lookup lookup, StockItem stock, Layout layout, Layout.LeftOver rest, Cutout wood) {
        Trim old = lookup.trim(stock);
        boolean own = stock.ownTrim() != null;
        boolean rawStart = rest.x().isZero();
        boolean rawEnd = rest.x().plus(rest.length()).equals(layout.length());
        boolean rawEdge = rest.y().isZero();
        boolean rawFarEdge = wood.slants() || rest.y().plus(rest.width()).equals(layout.width());
        return new Trim(
                rawStart ? raw(old.start(), own) : Length.ZERO,
                rawEnd ? raw(old.end(), own) : Length.ZERO,
                rawEdge ? raw(old.edge(), own) : Length.ZERO,
                rawFarEdge ? raw(old.farEdge(), own) : Length.ZERO);
    }

    /** An entry's own 0 says that the end is good; the shop's 0 only that nothing is trimmed, so nothing is said of this end. */
    private static @Nullable Length raw(@Nullable Length trim, boolean own) {
        return trim != null && trim.isZero() && !own ? null : trim;
    }

    private static List<Zone> zones(StockItem stock, Layout layout, Layout.LeftOver rest, Cutout wood) {
        Rectangle place =
                Rectangle.of(new Layout.LeftOver(rest.x(), rest.y(), rest.length(), wood.width(), rest.keep()));
        List<Zone> moved = new ArrayList<>();
        for (Zone zone : stock.zones()) {
            Rectangle seen = Rectangle.of(zone, layout).within(place);
            if (!seen.isEmpty()) {
                moved.add(new Zone(
                        Length.ofNanometres(seen.x0() - place.x0()),
                        Length.ofNanometres(seen.x1() - place.x0()),
                        zone.fromEdge() == null ? null : Length.ofNanometres(seen.y0() - place.y0()),
                        zone.toEdge() == null ? null : Length.ofNanometres(seen.y1() - place.y0()),
                        zone.severity(),
                        zone.face(),
                        zone.metal()));
            }
        }
        return moved;
    }

    private static StockItem.OnHand named(StockItem.OnHand offcut, String id, int quantity) {
        return offcut.pieces(id, quantity, offcut.zones());
    }

    private static String freeId(String stock, Set<String> taken) {
        for (int i = 1; ; i++) {
            String id = stock + "-" + letters(i);
            if (taken.add(id)) {
                return id;
            }
        }
    }

    /** 1 is a, 26 is z, 27 is aa. */
    static String letters(int number) {
        StringBuilder letters = new StringBuilder();
        for (int rest = number; rest > 0; rest = (rest - 1) / LETTERS) {
            letters.insert(0, (char) ('a' + (rest - 1) % LETTERS));
        }
        return letters.toString();
    }
}
