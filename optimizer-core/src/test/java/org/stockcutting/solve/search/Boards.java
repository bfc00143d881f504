package org.stockcutting.solve.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stockcutting.plan.CancelToken;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.Region;
import org.stockcutting.solve.instance.StockType;
import org.stockcutting.solve.instance.WorkMeter;

/** Small one-dimensional instances and plans for them, written in a line or two. Kerf 1, boards 10 wide, taken as they come. */
final class Boards {

    final List<ItemType> items = new ArrayList<>();
    final List<StockType> stocks = new ArrayList<>();
    final List<Boolean> onHand = new ArrayList<>();
    final List<Instance.Group> groups = new ArrayList<>();
    final List<Instance.Keep> keeps = new ArrayList<>();
    Instance.Limits limits = Instance.Limits.NONE;

    Boards item(long length, int demand) {
        items.add(new ItemType(length, 0, length, demand, demand));
        return this;
    }

    Boards item(ItemType item) {
        items.add(item);
        return this;
    }

    Boards forSale(long length, long cost) {
        return stock(length, 0, cost, StockType.UNLIMITED, 0, false);
    }

    Boards onHand(long length, int copies) {
        return stock(length, 0, 0, copies, 0, true);
    }

    /** Items have to be added first. */
    Boards stock(long length, long rawEnd, long cost, int copies, double offcutValue, boolean owned) {
        List<StockType.Placing> places = Collections.nCopies(items.size(), new StockType.Placing(true, false, 0));
        stocks.add(new StockType(length, 10, rawEnd, 0, cost, copies, offcutValue, List.of(), places));
        onHand.add(owned);
        return this;
    }

    Boards group(List<Integer> items, List<Integer> perSet) {
        groups.add(new Instance.Group(items, perSet));
        return this;
    }

    Instance instance() {
        return new Instance(items, stocks, 1, 1, limits, keeps, groups);
    }

    SearchTask task(Answer.PatternUse... start) {
        return new SearchTask(instance(), List.of(start), onHand);
    }

    /** A row of crosscuts. */
    Answer.PatternUse row(int stock, int copies, int... rowItems) {
        StockType board = stocks.get(stock);
        List<Region> parts = new ArrayList<>();
        long x = 0;
        for (int item : rowItems) {
            ItemType type = items.get(item);
            long width = type.width() == 0 ? board.width() : type.width();
            parts.add(new Region.Item(item, false, x, 0, type.length(), width));
            x += type.length() + 1;
        }
        return new Answer.PatternUse(stock, copies, new Region.Split(true, 0, 0, board.length(), board.width(), parts));
    }

    static WorkMeter meter(long steps) {
        return new WorkMeter(steps, System.nanoTime() + 60_000_000_000L, new CancelToken());
    }

    static List<Integer> itemsOf(Answer.PatternUse use) {
        return ((Region.Split) use.layout())
                .parts().stream().map(part -> ((Region.Item) part).item()).toList();
    }

    /** What a plan costs under the goal, worked out from its rectangles alone. */
    static long value(Instance instance, List<Answer.PatternUse> uses) {
        long value = 0;
        for (Answer.PatternUse use : uses) {
            StockType stock = instance.stocks().get(use.stock());
            long left = leftover(instance, use);
            boolean kept =
                    instance.keep().stream().anyMatch(keep -> left >= keep.length() && stock.width() >= keep.width());
            value +=
                    use.copies() * (stock.cost() - (kept ? Math.round(stock.offcutValue() * left * stock.width()) : 0));
        }
        return value;
    }

    static long leftover(Instance instance, Answer.PatternUse use) {
        StockType stock = instance.stocks().get(use.stock());
        List<Region> parts = ((Region.Split) use.layout()).parts();
        Region last = parts.get(parts.size() - 1);
        long end = last.x() + last.length();
        return end == stock.length() ? 0 : Math.max(0, stock.length() + stock.rawEnd() - end - instance.crosscutKerf());
    }

    static long longestLeftover(Instance instance, List<Answer.PatternUse> uses) {
        return uses.stream().mapToLong(use -> leftover(instance, use)).max().orElse(0);
    }

    /** First thing that is wrong with a plan, or an empty text. Shares no code with the search. */
    static String fault(Instance instance, List<Answer.PatternUse> start, List<Answer.PatternUse> uses) {
        if (!pieces(start).equals(pieces(uses))) {
            return "places " + pieces(uses) + ", the start " + pieces(start);
        }
        Map<Integer, Integer> copies = new HashMap<>();
        for (Answer.PatternUse use : uses) {
            copies.merge(use.stock(), use.copies(), Integer::sum);
            String fault = fault(instance, use);
            if (!fault.isEmpty()) {
                return fault + " in " + use;
            }
        }
        for (Map.Entry<Integer, Integer> used : copies.entrySet()) {
            int there = instance.stocks().get(used.getKey()).copies();
            if (there != StockType.UNLIMITED && used.getValue() > there) {
                return used.getValue() + " boards of stock " + used.getKey() + " of " + there;
            }
        }
        return "";
    }

    private static String fault(Instance instance, Answer.PatternUse use) {
        StockType stock = instance.stocks().get(use.stock());
        long free = 0;
        Map<Integer, Integer> counts = new HashMap<>();
        for (Region part : ((Region.Split) use.layout()).parts()) {
            Region.Item piece = (Region.Item) part;
            ItemType item = instance.items().get(piece.item());
            counts.merge(piece.item(), 1, Integer::sum);
            if (piece.x() < free || piece.x() + piece.length() > stock.length() || piece.length() != item.length()) {
                return "piece at " + piece.x() + " does not fit";
            }
            if (!stock.places().get(piece.item()).straight()) {
                return "item " + piece.item() + " may not lie there";
            }
            free = piece.x() + piece.length() + instance.crosscutKerf();
        }
        for (Map.Entry<Integer, Integer> count : counts.entrySet()) {
            if (count.getValue() > instance.items().get(count.getKey()).perBoard()) {
                return "too many of item " + count.getKey();
            }
        }
        for (Instance.Group group : instance.groups()) {
            int first = counts.getOrDefault(group.items().get(0), 0);
            for (int i = 0; i < group.items().size(); i++) {
                int count = counts.getOrDefault(group.items().get(i), 0);
                if (count * group.perSet().get(0) != first * group.perSet().get(i)
                        || count % group.perSet().get(i) != 0) {
                    return "split set";
                }
            }
        }
        return "";
    }

    private static Map<Integer, Integer> pieces(List<Answer.PatternUse> uses) {
        Map<Integer, Integer> pieces = new HashMap<>();
        uses.forEach(use -> itemsOf(use).forEach(item -> pieces.merge(item, use.copies(), Integer::sum)));
        return pieces;
    }
}
