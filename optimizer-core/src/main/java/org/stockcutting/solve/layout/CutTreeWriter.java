package org.stockcutting.solve.layout;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.pattern.CutNode;
import org.stockcutting.pattern.Direction;
import org.stockcutting.pattern.fit.UsableArea;
import org.stockcutting.plan.Layout;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.stock.Cutout;
import org.stockcutting.stock.StockItem;

/**
 * Writes the cut tree of one board: every slot the saw takes, what lies between, and what is left over.
 *
 * <p>Behind a piece comes its slot; a gap of more than one kerf and less than two is one slot of two overlapping passes; a wider gap
 * holds a leftover. Raw ends are trimmed only where a piece would keep them: a leftover runs to the raw end.
 */
final class CutTreeWriter {

    private final StockItem stock;
    private final ShopRules shop;
    private final UsableArea area;
    private final List<Label> labels;
    private final List<Layout.LeftOver> leftOvers = new ArrayList<>();

    private CutTreeWriter(Board board, ShopRules shop) {
        this.stock = board.stock();
        this.shop = shop;
        this.area = UsableArea.of(stock, shop);
        this.labels = board.labels();
    }

    /** A tree and the leftovers it leaves, by x then y. */
    record Written(CutNode tree, List<Layout.LeftOver> leftOvers) {}

    static Written write(Board board, ShopRules shop) {
        CutTreeWriter writer = new CutTreeWriter(board, shop);
        Rect raw = new Rect(
                0, 0, board.stock().length().nanometres(), board.stock().width().nanometres());
        CutNode tree = writer.cut(board.region(), raw);
        writer.leftOvers.sort(java.util.Comparator.comparing(Layout.LeftOver::x).thenComparing(Layout.LeftOver::y));
        return new Written(tree, List.copyOf(writer.leftOvers));
    }

    /** A rectangle in raw nanometres, from inclusive to exclusive. */
    private record Rect(long x0, long y0, long x1, long y1) {}

    private CutNode cut(Region region, Rect rect) {
        if (region instanceof Region.Split split) {
            return split(split.crosscut(), split.parts(), rect);
        }
        Region.Item item = (Region.Item) region;
        boolean needsCrosscut = item.x() != rect.x0() || item.x() + item.length() != rect.x1();
        boolean needsRip = item.y() != rect.y0() || item.y() + item.width() != rect.y1();
        if (!needsCrosscut && !needsRip) {
            return new CutNode.PartLeaf(labels.get(item.item()).piece().part().id());
        }
        return split(needsCrosscut && !(needsRip && ripsFirst()), List.of(item), rect);
    }

    private boolean ripsFirst() {
        return shop.limits().firstCut() == org.stockcutting.job.SawLimits.FirstCut.RIP;
    }

    private CutNode split(boolean crosscut, List<Region> parts, Rect rect) {
        List<CutNode.Slot> slots = new ArrayList<>();
        List<CutNode> pieces = new ArrayList<>();
        long from = crosscut ? rect.x0() : rect.y0();
        long to = crosscut ? rect.x1() : rect.y1();
        long kerf = (crosscut ? shop.kerf().crosscut() : shop.kerf().rip()).nanometres();
        long end = from;
        for (int i = 0; i < parts.size(); i++) {
            Region part = parts.get(i);
            long start = crosscut ? part.x() : part.y();
            if (i == 0) {
                lead(crosscut, from, start, kerf, rect, slots, pieces);
            } else {
                between(crosscut, end, start, kerf, rect, slots, pieces);
            }
            end = start + (crosscut ? part.length() : part.width());
            pieces.add(cut(part, along(crosscut, rect, start, end)));
        }
        trail(crosscut, end, to, kerf, rect, slots, pieces);
        if (slots.isEmpty()) {
            return pieces.get(0);
        }
        return new CutNode.Cuts(crosscut ? Direction.CROSSCUT : Direction.RIP, slots, pieces);
    }

    private void lead(
            boolean crosscut,
            long from,
            long start,
            long kerf,
            Rect rect,
            List<CutNode.Slot> slots,
            List<CutNode> pieces) {
        if (start == from) {
            return;
        }
        long slotFrom = Math.max(from, start - kerf);
        boolean isTrim = from == 0 && start == (crosscut ? area.x0() : area.y0()).nanometres();
        if (slotFrom == from) {
            pieces.add(CutNode.RestLeaf.SLIVER);
        } else if (isTrim) {
            pieces.add(CutNode.RestLeaf.TRIM);
        } else {
            slotFrom = rest(crosscut, from, slotFrom, start, kerf, rect, slots, pieces);
        }
        slots.add(slot(slotFrom, start));
    }

    /**
     * A leftover before the slot in front of a piece; the fence takes it off in strips where it reaches no further.
     *
     * @return where the slot begins: sooner where the last strip leaves no room for a slot of its own
     */
    private long rest(
            boolean crosscut,
            long from,
            long slotFrom,
            long start,
            long kerf,
            Rect rect,
            List<CutNode.Slot> slots,
            List<CutNode> pieces) {
        Length fence = crosscut ? null : shop.limits().ripCapacity();
        long reach = fence == null ? Long.MAX_VALUE : fence.nanometres();
        long at = from;
        while (reach > 0 && Math.min(slotFrom - at, rect.y1() - start) > reach) {
            pieces.add(leave(along(false, rect, at, at + reach)));
            if (slotFrom - at - reach < kerf) {
                return at + reach;
            }
            slots.add(slot(at + reach, at + reach + kerf));
            at += reach + kerf;
        }
        pieces.add(at == slotFrom ? CutNode.RestLeaf.SLIVER : leave(along(crosscut, rect, at, slotFrom)));
        return slotFrom;
    }

    private long usableEnd(boolean crosscut) {
        return (crosscut ? area.x1() : area.y1()).nanometres();
    }

    private long rawEnd(boolean crosscut) {
        return (crosscut ? stock.length() : stock.width()).nanometres();
    }

    private void between(
            boolean crosscut,
            long end,
            long start,
            long kerf,
            Rect rect,
            List<CutNode.Slot> slots,
            List<CutNode> pieces) {
        long gap = start - end;
        if (gap == kerf || gap < 2 * kerf) {
            slots.add(slot(end, start));
            return;
        }
        slots.add(slot(end, end + kerf));
        long slotFrom = start - kerf;
        if (gap == 2 * kerf) {
            pieces.add(CutNode.RestLeaf.SLIVER);
        } else {
            slotFrom = rest(crosscut, end + kerf, slotFrom, start, kerf, rect, slots, pieces);
        }
        slots.add(slot(slotFrom, start));
    }

    private void trail(
            boolean crosscut, long end, long to, long kerf, Rect rect, List<CutNode.Slot> slots, List<CutNode> pieces) {
        if (end == to) {
            return;
        }
        long slotTo = Math.min(to, end + kerf);
        boolean isTrim = to == rawEnd(crosscut) && end == usableEnd(crosscut);
        slots.add(slot(end, slotTo));
        if (slotTo == to) {
            pieces.add(CutNode.RestLeaf.SLIVER);
        } else if (isTrim) {
            pieces.add(CutNode.RestLeaf.TRIM);
        } else {
            pieces.add(leave(along(crosscut, rect, slotTo, to)));
        }
    }

    private CutNode leave(Rect rect) {
        Length x = Length.ofNanometres(rect.x0());
        Length y = Length.ofNanometres(rect.y0());
        Length length = Length.ofNanometres(rect.x1() - rect.x0());
        Length width = Length.ofNanometres(rect.y1() - rect.y0());
        boolean keep = false;
        for (KeepRule rule : shop.keepOffcuts()) {
            Length wood = Cutout.of(stock, x, y, x.plus(length), y.plus(width)).widthEnd();
            keep |= rule.keeps(stock.form(), length, wood);
        }
        leftOvers.add(new Layout.LeftOver(x, y, length, width, keep));
        return CutNode.RestLeaf.OFFCUT;
    }

    private static Rect along(boolean crosscut, Rect rect, long from, long to) {
        return crosscut ? new Rect(from, rect.y0(), to, rect.y1()) : new Rect(rect.x0(), from, rect.x1(), to);
    }

    private static CutNode.Slot slot(long from, long to) {
        return new CutNode.Slot(Length.ofNanometres(from), Length.ofNanometres(to));
    }
}
