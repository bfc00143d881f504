package org.stockcutting.solve.columns;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/**
 * The best answer to a tiny instance the plain way: the saw walks along each board unit by unit, every set of pieces it can cut is kept,
 * and a recursion over boards and demand tries them all.
 */
final class LineOracle {

    private final Instance instance;
    private final List<Map<List<Integer>, Long>> patterns = new ArrayList<>();
    private final Map<List<Integer>, long[]> memo = new HashMap<>();

    LineOracle(Instance instance) {
        this.instance = instance;
        for (StockType stock : instance.stocks()) {
            Map<List<Integer>, Long> found = walk(stock);
            found.keySet().removeIf(counts -> !isWholeSets(counts));
            patterns.add(found);
        }
    }

    private boolean isWholeSets(List<Integer> counts) {
        return instance.groups().stream().allMatch(group -> {
            int sets = counts.get(group.items().get(0)) / group.perSet().get(0);
            for (int g = 0; g < group.items().size(); g++) {
                if (counts.get(group.items().get(g)) != sets * group.perSet().get(g)) {
                    return false;
                }
            }
            return true;
        });
    }

    /** The saw stands at {@code at}, the last piece ended at {@code end}, the last cut at {@code cut}. */
    private record Walk(long at, long end, long cut, List<Integer> counts) {}

    /** Every set of pieces, with the least cost of the board over all ways to cut it. */
    private Map<List<Integer>, Long> walk(StockType stock) {
        Map<List<Integer>, Long> found = new HashMap<>();
        Set<Walk> seen = new HashSet<>();
        Deque<Walk> open = new ArrayDeque<>();
        List<Integer> none = new ArrayList<>();
        instance.items().forEach(i -> none.add(0));
        open.add(new Walk(0, 0, 0, none));
        while (!open.isEmpty()) {
            Walk walk = open.pop();
            if (!seen.add(walk)) {
                continue;
            }
            if (walk.at() < stock.length()) {
                open.push(new Walk(walk.at() + 1, walk.end(), walk.cut(), walk.counts()));
            }
            for (int i = 0; i < none.size(); i++) {
                Walk next = place(stock, walk, i);
                if (next != null) {
                    found.merge(next.counts(), stock.cost() - gain(instance, stock, next.end()), Math::min);
                    open.push(next);
                }
            }
        }
        return found;
    }

    private Walk place(StockType stock, Walk walk, int i) {
        ItemType item = instance.items().get(i);
        StockType.Placing place = stock.places().get(i);
        long kerf = instance.crosscutKerf();
        long x = walk.at();
        long end = x + item.length();
        if (!place.straight()
                || end > stock.length()
                || walk.counts().get(i) >= Math.min(item.demand(), item.perBoard())) {
            return null;
        }
        boolean cutBehind = end < stock.length() || stock.rawEnd() > 0;
        long raw = stock.length() + stock.rawEnd();
        long least = instance.limits().minimumPiece();
        boolean cutBefore = x > walk.cut() && x - walk.cut() >= kerf;
        if ((cutBefore && raw - walk.cut() < least) || (cutBehind && raw - x < least)) {
            return null;
        }
        for (StockType.ZoneRect zone : stock.zones()) {
            boolean takes = !zone.metal() && zone.severity() < place.woodClass();
            long from = zone.metal() ? Math.max(0, x - kerf) : x;
            long to = zone.metal() && cutBehind ? end + kerf : end;
            if (!takes && from < zone.x1() && zone.x0() < to) {
                return null;
            }
        }
        List<Integer> counts = new ArrayList<>(walk.counts());
        counts.set(i, counts.get(i) + 1);
        return new Walk(end + kerf, end, end + kerf, counts);
    }

    /** What the rest behind the last piece earns. */
    static long gain(Instance instance, StockType stock, long end) {
        if (stock.offcutValue() == 0 || end == stock.length()) {
            return 0;
        }
        long left = stock.length() + stock.rawEnd() - end - instance.crosscutKerf();
        boolean kept = instance.keep().stream().anyMatch(k -> left >= k.length() && stock.width() >= k.width());
        return kept && left > 0 ? (long) (stock.offcutValue() * left * stock.width()) : 0;
    }

    /** Least weight left unplaced, and the least cost at that. */
    long[] best() {
        List<Integer> demand = instance.items().stream().map(ItemType::demand).toList();
        return best(0, 0, demand);
    }

    private long[] best(int stock, int used, List<Integer> left) {
        if (stock == patterns.size()) {
            long weight = 0;
            for (int i = 0; i < left.size(); i++) {
                weight += left.get(i) * instance.items().get(i).weight();
            }
            return new long[] {weight, 0};
        }
        List<Integer> key = new ArrayList<>(left);
        key.add(stock);
        key.add(used);
        long[] known = memo.get(key);
        if (known != null) {
            return known;
        }
        long[] best = best(stock + 1, 0, left);
        int copies = instance.stocks().get(stock).copies();
        if (copies == StockType.UNLIMITED || used < copies) {
            for (var entry : patterns.get(stock).entrySet()) {
                List<Integer> rest = new ArrayList<>();
                for (int i = 0; i < left.size(); i++) {
                    rest.add(left.get(i) - entry.getKey().get(i));
                }
                if (rest.stream().allMatch(r -> r >= 0)) {
                    long[] then = best(stock, copies == StockType.UNLIMITED ? 0 : used + 1, rest);
                    long cost = then[1] + entry.getValue();
                    if (then[0] < best[0] || (then[0] == best[0] && cost < best[1])) {
                        best = new long[] {then[0], cost};
                    }
                }
            }
        }
        memo.put(key, best);
        return best;
    }
}
