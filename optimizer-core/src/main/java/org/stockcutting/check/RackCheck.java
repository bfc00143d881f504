package org.stockcutting.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stockcutting.length.Length;
import org.stockcutting.material.NominalSize;
import org.stockcutting.plan.Layout;
import org.stockcutting.stock.StockItem;
import org.stockcutting.stock.Trim;
import org.stockcutting.stock.Zone;

/** What goes to the rack: exactly the kept offcuts and the boards bought but not cut, each as the stock on hand of the next job. */
final class RackCheck {

    private RackCheck() {}

    /** @param uncut how many boards of a stock are bought but not cut */
    static void check(
            List<StockItem.OnHand> racked,
            List<LayoutCheck.Checked> layouts,
            Map<Board, Integer> uncut,
            Inspection inspection) {
        SortedMap<String, Integer> balance = new TreeMap<>();
        uncut.forEach((board, count) -> balance.merge(due(board, board.raw()), count, Integer::sum));
        for (LayoutCheck.Checked checked : layouts) {
            for (Layout.LeftOver left : checked.layout().offcuts()) {
                if (left.keep()) {
                    balance.merge(
                            due(checked.board(), LayoutCheck.rect(left)),
                            checked.layout().repeat(),
                            Integer::sum);
                }
            }
        }
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < racked.size(); i++) {
            StockItem.OnHand item = racked.get(i);
            String at = "/offcuts/" + i;
            inspection.require(
                    !item.id().isBlank() && ids.add(item.id()),
                    Cause.OFFCUT,
                    at + "/id",
                    "\"" + item.id() + "\" stands twice");
            inspection.require(
                    item.quantity() >= 1, Cause.OFFCUT, at + "/quantity", "is at least 1, got " + item.quantity());
            balance.merge(given(item), -item.quantity(), Integer::sum);
        }
        balance.forEach((what, difference) -> inspection.require(
                difference == 0,
                Cause.OFFCUT,
                "/offcuts",
                (difference > 0 ? difference + " missing: " : -difference + " too many: ") + what));
    }

    private static String due(Board board, Rect whole) {
        Rect raw = board.raw();
        Trim trim = board.trim();
        Evenness evenness = board.evenness();
        boolean full = whole.width() == raw.width();
        long narrow = evenness.woodAt(whole.x1(), whole.y0(), whole.y1());
        boolean slants = narrow < whole.width();
        Rect rect = new Rect(
                whole.x0(), whole.y0(), whole.x1(), whole.y0() + evenness.woodAt(whole.x0(), whole.y0(), whole.y1()));
        List<String> bad = new ArrayList<>();
        for (Board.Bad zone : board.zones()) {
            Rect inside = zone.rect().intersect(rect);
            if (!inside.isEmpty()) {
                bad.add(zone(
                        new Rect(
                                inside.x0() - rect.x0(),
                                inside.y0() - rect.y0(),
                                inside.x1() - rect.x0(),
                                inside.y1() - rect.y0()),
                        zone.zone()));
            }
        }
        return text(
                board.item(),
                full ? board.item().nominal() : null,
                rect.length(),
                rect.width(),
                rect.x0() > 0 ? 0 : Board.amount(trim.start()),
                rect.x1() < raw.x1() ? 0 : Board.amount(trim.end()),
                rect.y0() > 0 ? 0 : Board.amount(trim.edge()),
                rect.y1() < raw.y1() && !slants ? 0 : Board.amount(trim.farEdge()),
                "bow " + evenness.share(evenness.bow(), rect.length()) + " crook "
                        + evenness.share(evenness.crook(), rect.length())
                        + (slants ? " to " + Inspection.mm(narrow) : ""),
                bad);
    }

    private static String given(StockItem.OnHand item) {
        Length end = item.condition().widthEnd();
        Trim own = item.ownTrim();
        Trim trim = own == null ? Trim.NONE : own;
        List<String> bad = new ArrayList<>();
        for (Zone zone : item.zones()) {
            Length from = zone.fromEdge();
            Length to = zone.toEdge();
            bad.add(zone(
                    new Rect(
                            zone.from().nanometres(),
                            from == null ? 0 : from.nanometres(),
                            zone.to().nanometres(),
                            to == null ? item.width().nanometres() : to.nanometres()),
                    zone));
        }
        return text(
                item,
                item.nominal(),
                item.length().nanometres(),
                item.width().nanometres(),
                Board.amount(trim.start()),
                Board.amount(trim.end()),
                Board.amount(trim.edge()),
                Board.amount(trim.farEdge()),
                "bow " + item.condition().bow().nanometres() + " crook "
                        + item.condition().crook().nanometres()
                        + (end == null ? "" : " to " + Inspection.mm(end.nanometres())),
                bad);
    }

    private static String zone(Rect rect, Zone zone) {
        return rect.text() + " " + zone.severity().word() + " " + zone.face().word() + (zone.metal() ? " metal" : "");
    }

    private static String text(
            StockItem item,
            @Nullable NominalSize nominal,
            long length,
            long width,
            long start,
            long end,
            long edge,
            long farEdge,
            String evenness,
            List<String> zones) {
        return item.form().word() + " " + (nominal == null ? "" : nominal.name() + " ") + Inspection.mm(length) + " x "
                + Inspection.mm(width) + " x " + item.thickness() + " " + item.material()
                + (item.grade() == null ? "" : " " + item.grade()) + ", grain "
                + item.grain().word() + ", trim " + Inspection.mm(start) + " " + Inspection.mm(end) + " "
                + Inspection.mm(edge) + " " + Inspection.mm(farEdge) + ", " + evenness + ", zones "
                + zones.stream().sorted().toList();
    }
}
