package org.stockcutting.solve.guillotine;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.ItemType;
import org.stockcutting.solve.instance.StockType;

/** Random sheet jobs of a cabinet shop (sizes by common practice, no source): 96 x 48 in sheets in sixteenths, kerf 1/8 in. */
final class SheetJobs {

    private SheetJobs() {}

    static Instance typical(long seed, int types, int pieces) {
        Random random = new Random(seed);
        List<ItemType> items = new ArrayList<>();
        List<StockType.Placing> places = new ArrayList<>();
        int open = pieces;
        for (int t = 0; t < types; t++) {
            long length = 16L * (6 + random.nextInt(43)) + random.nextInt(16);
            long width = 16L * (3 + random.nextInt(22)) + random.nextInt(16);
            int demand = t + 1 == types
                    ? Math.max(1, open)
                    : Math.max(1, Math.min(open - (types - t - 1), 1 + random.nextInt(2 * pieces / types)));
            open -= demand;
            boolean locked = random.nextInt(10) < 4;
            items.add(new ItemType(Math.max(length, width), Math.min(length, width), length * width, demand, demand));
            places.add(new StockType.Placing(true, !locked, 0));
        }
        StockType sheet = new StockType(1536, 768, 0, 0, 6400, StockType.UNLIMITED, 0, List.of(), places);
        return new Instance(items, List.of(sheet), 2, 2, Instance.Limits.NONE, List.of(), List.of());
    }

    /** Area of the pieces over area of a sheet, kerfs folded in: no plan can take fewer sheets. */
    static double sheetsByArea(Instance instance) {
        double area = 0;
        for (ItemType item : instance.items()) {
            area += (double) item.demand() * (item.length() + 2) * (item.width() + 2);
        }
        return area / (1538.0 * 770.0);
    }
}
