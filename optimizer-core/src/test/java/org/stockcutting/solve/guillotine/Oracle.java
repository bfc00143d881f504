package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/**
 * Best answer for a few pieces by trying every edge-to-edge cut at every whole position, in real coordinates. Slow and plain.
 */
public final class Oracle {

    private final Instance instance;
    private final List<Integer> pieces = new ArrayList<>();
    private final List<Map<Long, Boolean>> known = new ArrayList<>();
    private long bestWeight = -1;
    private long bestCost;

    public Oracle(Instance instance) {
        this.instance = instance;
        for (int t = 0; t < instance.items().size(); t++) {
            for (int n = 0; n < instance.items().get(t).demand(); n++) {
                pieces.add(t);
            }
        }
        instance.stocks().forEach(s -> known.add(new HashMap<>()));
        share((1 << pieces.size()) - 1, new int[instance.stocks().size()], 0, 0);
    }

    public long bestWeight() {
        return bestWeight;
    }

    public long bestCost() {
        return bestCost;
    }

    private long weight(int mask) {
        long weight = 0;
        for (int i = 0; i < pieces.size(); i++) {
            weight += (mask >> i & 1) * instance.items().get(pieces.get(i)).weight();
        }
        return weight;
    }

    private void share(int open, int[] used, long weight, long cost) {
        if (weight > bestWeight || (weight == bestWeight && cost < bestCost)) {
            bestWeight = weight;
            bestCost = cost;
        }
        if (open == 0) {
            return;
        }
        int first = Integer.lowestOneBit(open);
        share(open - first, used, weight, cost);
        for (int mask = open; mask > 0; mask = (mask - 1) & open) {
            if ((mask & first) != 0 && complete(mask)) {
                for (int s = 0; s < used.length; s++) {
                    StockType stock = instance.stocks().get(s);
                    if ((stock.copies() == StockType.UNLIMITED || used[s] < stock.copies()) && fits(s, mask)) {
                        used[s]++;
                        share(open - mask, used, weight + weight(mask), cost + stock.cost());
                        used[s]--;
                    }
                }
            }
        }
    }

    private boolean complete(int mask) {
        int[] counts = new int[instance.items().size()];
        for (int i = 0; i < pieces.size(); i++) {
            counts[pieces.get(i)] += mask >> i & 1;
        }
        for (int t = 0; t < counts.length; t++) {
            if (counts[t] > instance.items().get(t).perBoard()) {
                return false;
            }
        }
        return instance.groups().stream().allMatch(group -> {
            int sets = counts[group.items().get(0)] / group.perSet().get(0);
            for (int i = 0; i < group.items().size(); i++) {
                if (counts[group.items().get(i)] != sets * group.perSet().get(i)) {
                    return false;
                }
            }
            return true;
        });
    }

    boolean fits(int s, int mask) {
        StockType stock = instance.stocks().get(s);
        return cell(s, mask, 0, stock.length(), 0, stock.width(), 'n', 0);
    }

    /** A rectangle that is a piece, is left over, or is cut in a direction other than the last. */
    private boolean cell(int s, int mask, long x0, long x1, long y0, long y1, char last, int stages) {
        if (mask == 0) {
            return true;
        }
        if (!room(s, mask, x1 - x0, y1 - y0)) {
            return false;
        }
        long key = key(mask, x0, x1, y0, y1, last, stages, 0);
        Boolean before = known.get(s).get(key);
        if (before != null) {
            return before;
        }
        Boolean first = instance.limits().firstCut();
        boolean found = Integer.bitCount(mask) == 1 && isPiece(s, mask, x0, x1, y0, y1);
        for (char way : new char[] {'x', 'y'}) {
            boolean allowed = way != last
                    && stages < instance.limits().stages()
                    && (last != 'n' || first == null || first == (way == 'x'));
            found = found || (allowed && row(s, mask, x0, x1, y0, y1, way, stages + 1, false));
        }
        known.get(s).put(key, found);
        return found;
    }

    /** Everything that decides in one number: small pieces on small boards. */
    private static long key(int mask, long x0, long x1, long y0, long y1, char way, int stages, int kind) {
        if (mask >= 1 << 8 || (x0 | x1 | y0 | y1) >= 1 << 10 || (x0 | x1 | y0 | y1) < 0 || stages >= 1 << 6) {
            throw new IllegalArgumentException("too large for an exhaustive search");
        }
        long places = ((x0 << 10 | x1) << 10 | y0) << 10 | y1;
        int cut = way == 'n' ? 0 : way == 'x' ? 1 : 2;
        return (((places << 8 | mask) << 6 | stages) << 2 | cut) << 2 | kind;
    }

    /** Cuts the rectangle once in this direction; what is behind the cut is cut again or closed. */
    private boolean row(int s, int mask, long x0, long x1, long y0, long y1, char way, int stages, boolean afterRest) {
        long key = key(mask, x0, x1, y0, y1, way, stages, afterRest ? 1 : 2);
        Boolean before = known.get(s).get(key);
        if (before != null) {
            return before;
        }
        boolean found = false;
        boolean x = way == 'x';
        long from = x ? x0 : y0;
        long to = x ? x1 : y1;
        long kerf = x ? instance.crosscutKerf() : instance.ripKerf();
        // A slot may begin before the rectangle if it only takes off less than a kerf of rest.
        for (long slot = from - kerf + 1; slot < to && !found; slot++) {
            if (!mayCut(s, x0, x1, y0, y1, way, slot)) {
                continue;
            }
            long next = slot + kerf;
            for (int sub = mask; sub >= 0 && !found; sub = sub == 0 ? -1 : (sub - 1) & mask) {
                int rest = mask - sub;
                if ((sub == 0 && afterRest) || (sub != 0 && slot <= from) || (rest != 0 && next >= to)) {
                    continue;
                }
                boolean part =
                        x ? cell(s, sub, x0, slot, y0, y1, way, stages) : cell(s, sub, x0, x1, y0, slot, way, stages);
                if (!part) {
                    continue;
                }
                if (rest == 0) {
                    found = sub != 0;
                } else if (x) {
                    found = cell(s, rest, next, x1, y0, y1, way, stages)
                            || row(s, rest, next, x1, y0, y1, way, stages, sub == 0);
                } else {
                    found = cell(s, rest, x0, x1, next, y1, way, stages)
                            || row(s, rest, x0, x1, next, y1, way, stages, sub == 0);
                }
            }
        }
        known.get(s).put(key, found);
        return found;
    }

    private boolean mayCut(int s, long x0, long x1, long y0, long y1, char way, long slot) {
        Instance.Limits limits = instance.limits();
        StockType stock = instance.stocks().get(s);
        long rawX = x1 == stock.length() ? stock.rawEnd() : 0;
        long rawY = y1 == stock.width() ? stock.rawFarEdge() : 0;
        if (x1 - x0 < limits.minimumPiece()) {
            return false;
        }
        long cx0 = x0;
        long cx1 = x1;
        long cy0 = y0;
        long cy1 = y1;
        if (way == 'x') {
            cx0 = slot;
            cx1 = slot + instance.crosscutKerf();
            if (y1 - y0 + rawY > limits.crosscutCapacity()) {
                return false;
            }
        } else {
            cy0 = slot;
            cy1 = slot + instance.ripKerf();
            long behind = Math.max(0, y1 + rawY - cy1);
            if (x1 - x0 + rawX > limits.longestRip() || Math.min(slot - y0, behind) > limits.ripCapacity()) {
                return false;
            }
        }
        for (StockType.ZoneRect zone : stock.zones()) {
            if (zone.metal() && cx0 < zone.x1() && cx1 > zone.x0() && cy0 < zone.y1() && cy1 > zone.y0()) {
                return false;
            }
        }
        return true;
    }

    private boolean isPiece(int s, int mask, long x0, long x1, long y0, long y1) {
        int t = pieces.get(Integer.numberOfTrailingZeros(mask));
        ItemType item = instance.items().get(t);
        StockType stock = instance.stocks().get(s);
        StockType.Placing place = stock.places().get(t);
        long width = item.width() == 0 ? stock.width() : item.width();
        boolean lies = (place.straight() && x1 - x0 == item.length() && y1 - y0 == width)
                || (place.turned() && x1 - x0 == width && y1 - y0 == item.length());
        for (StockType.ZoneRect zone : stock.zones()) {
            boolean takes = !zone.metal() && zone.severity() < place.woodClass();
            if (!takes && x0 < zone.x1() && x1 > zone.x0() && y0 < zone.y1() && y1 > zone.y0()) {
                return false;
            }
        }
        return lies && rawEnds(stock, x0, x1, y0, y1);
    }

    private boolean rawEnds(StockType stock, long x0, long x1, long y0, long y1) {
        Instance.Limits limits = instance.limits();
        long rawX = x1 == stock.length() ? stock.rawEnd() : 0;
        long rawY = y1 == stock.width() ? stock.rawFarEdge() : 0;
        boolean end =
                rawX == 0 || (y1 - y0 + rawY <= limits.crosscutCapacity() && x1 - x0 + rawX >= limits.minimumPiece());
        boolean edge = rawY == 0 || (x1 - x0 + rawX <= limits.longestRip() && x1 - x0 >= limits.minimumPiece());
        return end && edge;
    }

    private boolean room(int s, int mask, long length, long width) {
        long area = 0;
        for (int i = 0; i < pieces.size(); i++) {
            if ((mask >> i & 1) != 0) {
                ItemType item = instance.items().get(pieces.get(i));
                long across = item.width() == 0 ? instance.stocks().get(s).width() : item.width();
                area += item.length() * across;
                boolean either =
                        (item.length() <= length && across <= width) || (item.length() <= width && across <= length);
                if (!either) {
                    return false;
                }
            }
        }
        return area <= length * width;
    }
}
