package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/** Random jobs of a few pieces on small boards with everything that can restrict a layout. */
final class TinyJobs {

    private final Random random;

    private TinyJobs(long seed) {
        this.random = new Random(seed * 7919 + 17);
    }

    static Instance random(long seed, int mostPieces) {
        return new TinyJobs(seed).instance(mostPieces);
    }

    private boolean oneIn(int n) {
        return random.nextInt(n) == 0;
    }

    private Instance instance(int mostPieces) {
        int open = 1 + random.nextInt(mostPieces);
        List<ItemType> items = new ArrayList<>();
        List<Instance.Group> groups = new ArrayList<>();
        while (open > 0) {
            int demand = 1 + random.nextInt(Math.min(open, Math.max(2, mostPieces / 4)));
            open -= demand;
            long width = oneIn(10) ? 0 : 1 + random.nextInt(5);
            int perBoard = oneIn(8) ? 1 : demand;
            items.add(new ItemType(1 + random.nextInt(7), width, 1 + random.nextInt(20), demand, perBoard));
        }
        if (oneIn(6) && items.size() >= 2) {
            ItemType second = items.get(1);
            int demand = items.get(0).demand();
            items.set(
                    0,
                    new ItemType(
                            items.get(0).length(),
                            items.get(0).width(),
                            items.get(0).weight(),
                            demand,
                            demand));
            items.set(1, new ItemType(second.length(), second.width(), second.weight(), demand, demand));
            groups.add(new Instance.Group(List.of(0, 1), List.of(1, 1)));
        }
        long kerfX = random.nextInt(3);
        long kerfY = oneIn(2) ? kerfX : random.nextInt(3);
        List<StockType> stocks = new ArrayList<>();
        int many = 1 + random.nextInt(3);
        for (int s = 0; s < many; s++) {
            stocks.add(stock(items));
        }
        return new Instance(items, stocks, kerfX, kerfY, limits(), List.of(), groups);
    }

    private StockType stock(List<ItemType> items) {
        long length = 5 + random.nextInt(6);
        long width = 2 + random.nextInt(5);
        int copies = oneIn(2) ? StockType.UNLIMITED : random.nextInt(3);
        long cost = oneIn(5) ? 0 : 10 * (1 + random.nextInt(3)) + length * width;
        List<StockType.ZoneRect> zones = new ArrayList<>();
        while (oneIn(3)) {
            long x = random.nextInt((int) length);
            long y = oneIn(3) ? 0 : random.nextInt((int) width);
            long endX = Math.min(length, x + 1 + random.nextInt(2));
            long endY = oneIn(3) ? width : Math.min(width, y + 1 + random.nextInt(2));
            zones.add(new StockType.ZoneRect(x, y, endX, endY, random.nextInt(3), oneIn(4)));
        }
        List<StockType.Placing> places = new ArrayList<>();
        for (ItemType item : items) {
            boolean turned = item.width() > 0 && oneIn(2);
            places.add(
                    oneIn(12)
                            ? StockType.Placing.NOWHERE
                            : new StockType.Placing(!turned || oneIn(2), turned, random.nextInt(3)));
        }
        return new StockType(length, width, oneIn(3) ? 1 : 0, oneIn(3) ? 1 : 0, cost, copies, 0, zones, places);
    }

    private Instance.Limits limits() {
        if (oneIn(2)) {
            return Instance.Limits.NONE;
        }
        return new Instance.Limits(
                oneIn(3) ? 1 + random.nextInt(4) : Long.MAX_VALUE,
                oneIn(3) ? 4 + random.nextInt(7) : Long.MAX_VALUE,
                oneIn(3) ? 2 + random.nextInt(5) : Long.MAX_VALUE,
                oneIn(2) ? 1 + random.nextInt(4) : Integer.MAX_VALUE,
                oneIn(3) ? (Boolean) oneIn(2) : null,
                oneIn(4) ? 1 + random.nextInt(6) : 0);
    }
}
