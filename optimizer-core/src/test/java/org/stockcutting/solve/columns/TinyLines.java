package org.stockcutting.solve.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/** Random tiny one-dimensional instances: several lengths, limited and free boards, zones, kerf. */
final class TinyLines {

    private final Random random;
    private final int longest;
    private final int types;

    TinyLines(long seed, int longest, int types) {
        this.random = new Random(seed);
        this.longest = longest;
        this.types = types;
    }

    private int upTo(int most) {
        return 1 + random.nextInt(most);
    }

    private boolean chance(int oneIn) {
        return random.nextInt(oneIn) == 0;
    }

    Instance plain() {
        List<ItemType> items = items();
        return instance(items, Instance.Limits.NONE, List.of(), List.of(), 0);
    }

    Instance withMinimumPiece() {
        Instance.Limits limits = new Instance.Limits(
                Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, Integer.MAX_VALUE, null, upTo(longest / 2));
        return instance(items(), limits, List.of(), List.of(), 0);
    }

    Instance withOffcuts() {
        Instance.Keep keep = new Instance.Keep(upTo(longest / 2), upTo(3));
        return instance(items(), Instance.Limits.NONE, List.of(keep), List.of(), upTo(3));
    }

    Instance withGroup() {
        List<ItemType> items = new ArrayList<>();
        int first = upTo(2);
        int second = upTo(2);
        int sets = upTo(2);
        items.add(item(first * sets));
        items.add(item(second * sets));
        while (items.size() < types) {
            items.add(item(upTo(3)));
        }
        Instance.Group group = new Instance.Group(List.of(0, 1), List.of(first, second));
        return instance(items, Instance.Limits.NONE, List.of(), List.of(group), 0);
    }

    private List<ItemType> items() {
        List<ItemType> items = new ArrayList<>();
        int count = upTo(types);
        while (items.size() < count) {
            items.add(item(upTo(3)));
        }
        return items;
    }

    private ItemType item(int demand) {
        int length = chance(3) ? upTo(longest) : upTo(longest / 2);
        return new ItemType(length, chance(4) ? 2 : 0, upTo(9), demand, chance(6) ? upTo(demand) : demand);
    }

    private Instance instance(
            List<ItemType> items,
            Instance.Limits limits,
            List<Instance.Keep> keep,
            List<Instance.Group> groups,
            double offcutValue) {
        List<StockType> stocks = new ArrayList<>();
        int count = upTo(4);
        while (stocks.size() < count) {
            stocks.add(stock(items, offcutValue));
        }
        return new Instance(items, stocks, random.nextInt(3), 1, limits, keep, groups);
    }

    private StockType stock(List<ItemType> items, double offcutValue) {
        int length = longest / 3 + upTo(longest - longest / 3);
        boolean owned = chance(2);
        List<StockType.ZoneRect> zones = new ArrayList<>();
        while (owned && zones.size() < 3 && chance(2)) {
            int from = random.nextInt(length);
            int to = Math.min(length, from + upTo(4));
            zones.add(new StockType.ZoneRect(from, 0, to, 2, random.nextInt(3), chance(5)));
        }
        List<StockType.Placing> places = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            places.add(chance(12) ? StockType.Placing.NOWHERE : new StockType.Placing(true, false, random.nextInt(3)));
        }
        int rawEnd = random.nextInt(3);
        // An offcut never earns more than the board costs.
        long cost = offcutValue > 0 ? (long) offcutValue * 2 * (length + rawEnd) : owned && chance(2) ? 0 : upTo(20);
        int copies = owned ? upTo(3) : StockType.UNLIMITED;
        return new StockType(length, 2, rawEnd, 0, cost, copies, offcutValue, zones, places);
    }
}
