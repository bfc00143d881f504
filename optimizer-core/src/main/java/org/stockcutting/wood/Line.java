package org.stockcutting.wood;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.material.WoodClass;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Zone;

/**
 * One board along its length: where pieces of each class may lie. Zones count over the whole width.
 *
 * @param kind which kind of stock of the group it is
 * @param from where the usable length begins
 * @param to where it ends
 * @param clear for each class, by ordinal: the stretches between bad zones, in order
 */
record Line(int kind, long from, long to, List<List<Span>> clear) {

    /** A stretch of a board. */
    record Span(long from, long to) {
        long length() {
            return to - from;
        }
    }

    static Line of(int kind, StockItem stock, List<Zone> zones, ShopRules shop) {
        UsableArea area = UsableArea.of(stock, shop);
        long from = area.x0().nanometres();
        long to = area.x1().nanometres();
        List<List<Span>> clear = new ArrayList<>();
        for (WoodClass woodClass : WoodClass.values()) {
            clear.add(clear(from, to, zones, woodClass));
        }
        return new Line(kind, from, to, clear);
    }

    private static List<Span> clear(long from, long to, List<Zone> zones, WoodClass woodClass) {
        List<Zone> bad = zones.stream()
                .filter(zone -> !zone.isAcceptableFor(woodClass))
                .sorted((a, b) -> a.from().compareTo(b.from()))
                .toList();
        List<Span> spans = new ArrayList<>();
        long at = from;
        for (Zone zone : bad) {
            add(spans, at, Math.min(to, zone.from().nanometres()));
            at = Math.max(at, zone.to().nanometres());
        }
        add(spans, at, to);
        return List.copyOf(spans);
    }

    private static void add(List<Span> spans, long from, long to) {
        if (to > from) {
            spans.add(new Span(from, to));
        }
    }

    /** Clear stretches for this class. */
    List<Span> clear(WoodClass woodClass) {
        return clear.get(woodClass.ordinal());
    }

    /** True if no zone keeps this stretch from a piece of this class. */
    boolean isClear(Length x, Length extent, WoodClass woodClass) {
        long start = x.nanometres();
        long end = start + extent.nanometres();
        return clear(woodClass).stream().anyMatch(span -> span.from() <= start && end <= span.to());
    }
}
